import type { LoadCase } from './load-case.ts';

/** Before the id of a load that somebody added; those of the charts have none. */
const OWN_LOAD = 'own-';

/** True for a load that somebody added and named. */
export function isOwnLoad(id: string): boolean {
	return id.startsWith(OWN_LOAD);
}

/**
 * A load's name amid a sentence. One that somebody typed stands as typed, in quotes: whether its capital
 * letter belongs to a name, only they know.
 *
 * @example nameAmid({ id: 'on-foot', name: 'One person with gear' }) // => 'one person with gear'
 * @example nameAmid({ id: 'own-1', name: 'Old sled' }) // => '“Old sled”'
 */
export function nameAmid({ id, name }: Pick<LoadCase, 'id' | 'name'>): string {
	if (isOwnLoad(id)) return `“${name}”`;
	return /^\p{Lu}\p{Lu}/u.test(name) ? name : name.charAt(0).toLowerCase() + name.slice(1);
}
