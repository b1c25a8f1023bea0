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

/** The interval that holds the value of a rank, from 0. */
export function intervalOf(rank: number, { start }: Dealt): number {
	let low = 0;
	let high = start.length - 1;
	while (high - low > 1) {
		const middle = (low + high) >> 1;
		if ((start[middle] ?? 0) <= rank) low = middle;
		else high = middle;
	}
	return low;
}
