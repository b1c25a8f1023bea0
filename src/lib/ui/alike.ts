/**
 * Things of one key put together, in the order in which each key comes first.
 *
 * @example alike(['a1', 'b1', 'a2'], ([letter]) => letter) // => [['a1', 'a2'], ['b1']]
 */
export function alike<Thing>(
	things: readonly Thing[],
	key: (thing: Thing) => string | undefined
): Thing[][] {
	const groups = new Map<string | undefined, Thing[]>();
	for (const thing of things) {
		const group = groups.get(key(thing)) ?? [];
		group.push(thing);
		groups.set(key(thing), group);
	}
	return [...groups.values()];
}
