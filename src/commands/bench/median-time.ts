/** Median wall time of one call in milliseconds, after calls that warm the compiler up. */
export function medianTime_ms(run: () => unknown, calls: number, warmUp: number): number {
	for (let i = 0; i < warmUp; i++) run();
	return median(times_ms(run, calls));
}

/** Wall time of each of some calls in milliseconds. */
export function times_ms(run: () => unknown, calls: number): number[] {
	return Array.from({ length: calls }, () => {
		const start_ms = performance.now();
		run();
		return performance.now() - start_ms;
	});
}

/** The middle value; of an even count the upper of the two. */
export function median(values: readonly number[]): number {
	const middle = values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)];
	if (middle === undefined) throw new RangeError('median needs at least 1 value');
	return middle;
}
