/** Doubt of an estimate as standard deviations, split by what it is shared by. */
export interface Doubt {
	/** Errors that the whole site shares: the model, its weather, the day of freeze-up. */
	site_m: number;
	/** Scatter from spot to spot, and of the tape in a hole. */
	spot_m: number;
}

const Z10 = 1.28; // 10 % of a normal distribution lies below the mean less 1.28 σ

const SPOTS_MEAN = 1.163; // mean of the least of five standard normals, below zero [C]
const SPOTS_Z10 = 2.037; // its 10 % point: Φ(-z) = 1 - 0.9^(1/5) [C]

/**
 * What one hole at a random spot falls short of in one case of ten.
 *
 *   p10 = h - 1.28 √(σ_site² + σ_spot²), not below zero
 *
 * Normal errors.
 */
export function lowerBound_m(estimate_m: number, doubt: Doubt): number {
	return Math.max(0, estimate_m - Z10 * Math.hypot(doubt.site_m, doubt.spot_m));
}

/**
 * What the thinnest of five spots falls short of in one case of ten: the bound for vehicles.
 *
 *   h - 1.163 σ_spot - √((1.28 σ_site)² + (0.874 σ_spot)²), not below zero
 *
 * The five share the site's error and scatter on their own. Normal errors; exact where either part
 * is zero, within 2 % of the doubt between.
 */
export function thinnestOfFive_m(estimate_m: number, doubt: Doubt): number {
	const { site_m, spot_m } = doubt;
	const spread_m = Math.hypot(Z10 * site_m, (SPOTS_Z10 - SPOTS_MEAN) * spot_m);
	return Math.max(0, estimate_m - SPOTS_MEAN * spot_m - spread_m);
}
