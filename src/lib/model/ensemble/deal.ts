/** Values dealt out to even intervals, as many as there are values, from the least to the greatest. */
export interface Dealt {
	/** Interval of each value. */
	readonly interval: Int32Array;
	/** How many values lie before each interval; and all of them, last. */
	readonly start: Int32Array;
}

export function emptyDealt(count: number): Dealt {
	return { interval: new Int32Array(count), start: new Int32Array(count + 1) };
}

/** Deals values out; false, with nothing done, where all are the same. */
export function deal(values: Float64Array, { interval, start }: Dealt): boolean {
	const [low, high] = extent(values);
	if (!(high > low)) return false;
	const scale = (values.length - 1) / (high - low);
	start.fill(0);
	for (let i = 0; i < values.length; i++) {
		const k = (((values[i] ?? 0) - low) * scale) | 0;
		interval[i] = k;
		start[k + 1] = (start[k + 1] ?? 0) + 1;
	}
	let sum = 0;
	for (let k = 0; k < start.length; k++) {
		sum += start[k] ?? 0;
		start[k] = sum;
	}
	return true;
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

/** The intervals that hold the values of some ranks, from 0, in ascending order; each once. */
export function intervalsOf(ranks: readonly number[], { start }: Dealt): number[] {
	const intervals: number[] = [];
	let k = 0;
	for (const rank of ranks) {
		while ((start[k + 1] ?? Infinity) <= rank) k++;
		if (intervals.at(-1) !== k) intervals.push(k);
	}
	return intervals;
}
