/** Where a share lies in nine cases of ten. */
export interface ShareBand {
	low: number;
	high: number;
}

/**
 * The share of `count` independent readings that falls on the side of a chance `share`, from its 5 % to
 * its 95 % quantile: the least k of n with
 *
 *   Σ_{i ≤ k} C(n, i) p^i (1 - p)^{n - i}  ≥  0.05 and 0.95
 */
export function binomialBand(count: number, share: number): ShareBand {
	if (count === 0 || share <= 0 || share >= 1) return { low: share, high: share };
	return {
		low: quantile(count, share, 0.05) / count,
		high: quantile(count, share, 0.95) / count
	};
}

/** By logarithms, since (1 - p)^n of many readings is less than a number can hold. */
function quantile(count: number, share: number, wanted: number): number {
	const odds = Math.log(share) - Math.log1p(-share);
	let logarithm = count * Math.log1p(-share);
	let below = Math.exp(logarithm);
	let k = 0;
	while (below < wanted && k < count) {
		logarithm += Math.log((count - k) / (k + 1)) + odds;
		k += 1;
		below += Math.exp(logarithm);
	}
	return k;
}
