const SQRT_PI = Math.sqrt(Math.PI);

/** Standard normal quantiles at 0.95 and 0.90. */
export const Z95 = 1.644854;
export const Z90 = 1.281552;

/**
 * Continuous ranked probability score of a Gaussian, in the unit of its arguments; the absolute
 * error where `sigma` is zero.
 *
 *   crps = sigma [ z (2 Phi(z) - 1) + 2 phi(z) - 1/sqrt(pi) ],  z = (observed - mean) / sigma
 *
 * Gneiting and Raftery, J. Am. Stat. Assoc. 102 (2007) 359-378.
 */
export function gaussianCrps(mean: number, sigma: number, observed: number): number {
	if (sigma === 0) return Math.abs(observed - mean);
	const z = (observed - mean) / sigma;
	const density = Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
	return sigma * (z * (2 * normalCdf(z) - 1) + 2 * density - 1 / SQRT_PI);
}

/**
 * Share of a standard normal below `z`, by the rational approximation 7.1.26 of Abramowitz and
 * Stegun, Handbook of Mathematical Functions (1964); off by less than 1e-7.
 */
export function normalCdf(z: number): number {
	const x = Math.abs(z) / Math.SQRT2;
	const t = 1 / (1 + 0.3275911 * x);
	const series =
		t *
		(0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429))));
	const upper = (series * Math.exp(-x * x)) / 2;
	return z < 0 ? upper : 1 - upper;
}
