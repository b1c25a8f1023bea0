/**
 * A quantile of sorted values, straight between neighbours.
 * @throws RangeError without any value
 */
export function quantileOf(sorted: ArrayLike<number>, share: number): number {
	const place = (sorted.length - 1) * share;
	const below = sorted[Math.floor(place)];
	const above = sorted[Math.ceil(place)];
	if (below === undefined || above === undefined)
		throw new RangeError(`no quantile ${share} of ${sorted.length} values`);
	return below + (place - Math.floor(place)) * (above - below);
}

/**
 * The share whose quantile was observed: the inverse of {@link quantileOf}, 0 below all values and 1
 * above. Over many observations of an honest ensemble every share is as frequent as any other.
 */
export function rankOf(sorted: ArrayLike<number>, observed: number): number {
	const last = sorted.length - 1;
	const above = firstAtLeast(sorted, observed);
	const [low, high] = [sorted[above - 1], sorted[above]];
	if (low === undefined || high === undefined) return above === 0 ? 0 : 1;
	return (above - 1 + (observed - low) / (high - low)) / last;
}

function firstAtLeast(sorted: ArrayLike<number>, limit: number): number {
	let at = 0;
	while (at < sorted.length && (sorted[at] ?? NaN) < limit) at += 1;
	return at;
}

/**
 * Continuous ranked probability score of an ensemble, in the unit of its values.
 *
 *   crps = 1/n Σ |x_i - y| - 1/(2 n²) Σ Σ |x_i - x_j|
 *
 * The plain form: that of the members as they are, which overstates what endless members of the same
 * distribution would score by a share of about 1/n. Gneiting and Raftery, J. Am. Stat. Assoc. 102
 * (2007) 359-378.
 */
export function ensembleCrps(sorted: ArrayLike<number>, observed: number): number {
	const count = sorted.length;
	let away = 0;
	let apart = 0;
	for (let i = 0; i < count; i++) {
		const value = sorted[i] ?? 0;
		away += Math.abs(value - observed);
		apart += (2 * i + 1 - count) * value;
	}
	return away / count - apart / count ** 2;
}
