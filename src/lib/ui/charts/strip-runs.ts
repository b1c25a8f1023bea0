/** Neighbours of one value. */
export interface Run<Value> {
	value: Value;
	/** Index of the first. */
	from: number;
	length: number;
}

/** @example runs([1, 1, 0]) // => [{ value: 1, from: 0, length: 2 }, { value: 0, from: 2, length: 1 }] */
export function runs<Value>(values: readonly Value[]): Run<Value>[] {
	const found: Run<Value>[] = [];
	values.forEach((value, index) => {
		const last = found.at(-1);
		if (last && last.value === value) last.length += 1;
		else found.push({ value, from: index, length: 1 });
	});
	return found;
}
