/** Published one-line laws, for comparison and checks; the estimate itself never uses them. */

/** Degree-days where warm days subtract, floored at zero: the running sum after each day. */
export function netFreezing_degCd(dailyMeans_degC: readonly number[]): number[] {
	let sum_degCd = 0;
	return dailyMeans_degC.map((mean) => (sum_degCd = Math.max(0, sum_degCd - mean)));
}

/** Frost and thaw summed apart, from daily means alone. */
export function grossDegreeDays(dailyMeans_degC: readonly number[]): {
	freezing_degCd: number;
	thawing_degCd: number;
} {
	let freezing_degCd = 0;
	let thawing_degCd = 0;
	for (const mean of dailyMeans_degC) {
		freezing_degCd += Math.max(0, -mean);
		thawing_degCd += Math.max(0, mean);
	}
	return { freezing_degCd, thawing_degCd };
}

/**
 * Thickness by a degree-day law from a known start, never below it.
 *
 *   h = sqrt(h0² + α² FDD)
 *
 * α in cm per √(°C·d) as published: 2.7 windy and bare, 1.7 to 2.4 with snow. Too thick below some
 * 25 °C·d. Source: [Stefan1891]; coefficients [USACE2002] [T].
 */
export function stefan_m(alpha_cm: number, freezing_degCd: number, start_m = 0): number {
	return Math.sqrt(start_m ** 2 + (alpha_cm / 100) ** 2 * Math.max(0, freezing_degCd));
}

/** Arctic sea ice with average snow, h = 1.33 FDD^0.58 cm. Source: [Lebedev1938] [R2]. */
export function lebedev_m(freezing_degCd: number): number {
	return (1.33 * Math.max(0, freezing_degCd) ** 0.58) / 100;
}

/** Sea ice with snow, h² + 50 h = 8 FDD cm. Source: [Zubov1945] [R]. */
export function zubov_m(freezing_degCd: number): number {
	return (-25 + Math.sqrt(625 + 8 * Math.max(0, freezing_degCd))) / 100;
}
