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
