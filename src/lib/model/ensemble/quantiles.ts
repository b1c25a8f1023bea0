/**
 * Quantiles of some values for several shares at once, by sorting them in a typed array.
 *
 *   q(p) = x[k] + (h - k)(x[k+1] - x[k]),  h = (n - 1) p,  k = floor h
 *
 * Linear between order statistics, type 7 of [HyndmanFan1996]. Exact for the values given. `null`
 * where there are none.
 */
export function quantilesOf(values: Float64Array, shares: readonly number[]): (number | null)[] {
	const sorted = values.toSorted();
	return shares.map((share) => quantileOfSorted(sorted, share));
}

/** The same of values that are sorted already. @throws RangeError for a share outside 0 to 1 */
export function quantileOfSorted(sorted: Float64Array, share: number): number | null {
	if (!(share >= 0 && share <= 1))
		throw new RangeError(`a share must lie between 0 and 1, got ${share}`);
	if (sorted.length === 0) return null;
	const at = (sorted.length - 1) * share;
	const below = Math.floor(at);
	const low = sorted[below] ?? 0;
	const high = sorted[below + 1] ?? low;
	return low + (at - below) * (high - low);
}

/** Ranks, from 0, of the sorted values that {@link quantileOfSorted} looks at. */
export function ranksOf(shares: readonly number[], count: number): number[] {
	return shares.flatMap((share) => {
		const below = Math.floor((count - 1) * share);
		return [below, Math.min(count - 1, below + 1)];
	});
}

/** Share of sorted values that are a limit or more, by bisection; `null` where there are none. */
export function shareAtLeast(sorted: Float64Array, limit: number): number | null {
	if (sorted.length === 0) return null;
	let low = 0;
	let high = sorted.length;
	while (low < high) {
		const middle = (low + high) >> 1;
		if ((sorted[middle] ?? 0) < limit) low = middle + 1;
		else high = middle;
	}
	return (sorted.length - low) / sorted.length;
}
