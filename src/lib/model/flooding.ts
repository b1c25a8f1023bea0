import { CLEAR_ICE_kg_m3, WATER_kg_m3, WHITE_ICE_kg_m3 } from './constants.ts';

/**
 * Load that the bare sheet could carry before its top is level with the water, slush counted in.
 *
 *   B = h_c (ρ_w - ρ_i) + h_w (ρ_w - ρ_wi) + h_sl (ρ_w - ρ_sl)
 *
 * Archimedes; used by [Leppaeranta1983] and [Saloranta2000] [M-hi].
 */
export function buoyancy_kg_m2(
	clear_m: number,
	white_m: number,
	slush_m = 0,
	slush_kg_m3 = WATER_kg_m3,
	clear_kg_m3 = CLEAR_ICE_kg_m3
): number {
	return (
		clear_m * (WATER_kg_m3 - clear_kg_m3) +
		white_m * (WATER_kg_m3 - WHITE_ICE_kg_m3) +
		slush_m * (WATER_kg_m3 - slush_kg_m3)
	);
}

/** Top of the ice above the water; negative when the load would put it under. */
export function freeboard_m(buoyancy_kg_m2: number, load_kg_m2: number): number {
	return (buoyancy_kg_m2 - load_kg_m2) / WATER_kg_m3;
}

/**
 * Slush that the water makes of overloading snow, in balance again afterwards.
 *
 *   h_slush = (load - B) ρ_i / (ρ_w ρ_dry),  at most what the snow can give
 *
 * ρ_dry is the snow in the slush: the snow's own density without compaction, more with it.
 * Derived from Archimedes [C]. @example floodedSlush_m(50, 16.6, 250, 917) // => 0.1225
 */
export function floodedSlush_m(
	snow_kg_m2: number,
	buoyancy_kg_m2: number,
	matrix_kg_m3: number,
	clear_kg_m3 = CLEAR_ICE_kg_m3
): number {
	const excess_kg_m2 = Math.max(0, snow_kg_m2 - buoyancy_kg_m2);
	const balanced_m = (excess_kg_m2 * clear_kg_m3) / (WATER_kg_m3 * matrix_kg_m3);
	return Math.min(balanced_m, snow_kg_m2 / matrix_kg_m3);
}

/**
 * Mean over the lake of the snow load beyond buoyancy, where the snow lies unevenly.
 *
 *   E = s ln(1 + exp((load - B)/s)),  s = spread × load
 *
 * A logistic spread about the mean load stands for drifts (5 to 20 m apart [Sturm2003]) and cracks:
 * part of a lake floods while its mean is still afloat, and part stays dry when it is not.
 */
export function localExcess_kg_m2(
	snow_kg_m2: number,
	buoyancy_kg_m2: number,
	spreadFraction: number
): number {
	const spread_kg_m2 = spreadFraction * snow_kg_m2;
	const excess_kg_m2 = snow_kg_m2 - buoyancy_kg_m2;
	if (spread_kg_m2 <= 1e-9) return Math.max(0, excess_kg_m2);
	const x = excess_kg_m2 / spread_kg_m2;
	return x > 30 ? excess_kg_m2 : spread_kg_m2 * Math.log1p(Math.exp(x));
}
