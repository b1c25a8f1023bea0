import {
	CLEAR_ICE_kg_m3,
	DAY_s,
	FUSION_J_kg,
	WATER_kg_m3,
	WHITE_ICE_W_mK,
	WHITE_ICE_kg_m3
} from './constants.ts';

/** Share of water in slush, φ = 1 - ρ_dry/ρ_i. @example waterFraction(375) // => 0.59 [C] */
export function waterFraction(matrix_kg_m3: number): number {
	return 1 - matrix_kg_m3 / CLEAR_ICE_kg_m3;
}

/** Density of slush: its snow and the water between. */
export function slush_kg_m3(matrix_kg_m3: number): number {
	return matrix_kg_m3 + waterFraction(matrix_kg_m3) * WATER_kg_m3;
}

/**
 * Slush that some water makes of the lowest snow; what finds no snow runs off.
 *
 *   h = W/(ρ_w φ), at most snow/ρ_dry
 */
export function soakedSlush_m(
	water_kg_m2: number,
	snow_kg_m2: number,
	matrix_kg_m3: number
): number {
	const byWater_m = water_kg_m2 / (WATER_kg_m3 * waterFraction(matrix_kg_m3));
	return Math.min(byWater_m, snow_kg_m2 / matrix_kg_m3);
}

/**
 * Frost that freezes a depth of slush from its top.
 *
 *   FDD = ρ_w φ L (z²/(2 k_w) + z R)/86400
 *
 * R is the cover over the slush, film included; the ice below is at 0 °C and takes no heat.
 * Derived from the layered conduction law [C]. @example frostToFreeze_degCd(0.1, 0.6, 1 / 20) // => 17.4
 */
export function frostToFreeze_degCd(depth_m: number, phi: number, cover_m2K_W: number): number {
	const heat_J_m3 = WATER_kg_m3 * phi * FUSION_J_kg;
	return (heat_J_m3 * (depth_m ** 2 / (2 * WHITE_ICE_W_mK) + depth_m * cover_m2K_W)) / DAY_s;
}

/** Slush frozen by some frost: {@link frostToFreeze_degCd} solved for the depth. */
export function frozenSlush_m(freezing_degCd: number, phi: number, cover_m2K_W: number): number {
	if (freezing_degCd <= 0) return 0;
	const offset_m = WHITE_ICE_W_mK * cover_m2K_W;
	const heat_J_m3 = WATER_kg_m3 * phi * FUSION_J_kg;
	const gain_m2 = (2 * WHITE_ICE_W_mK * DAY_s * freezing_degCd) / heat_J_m3;
	return Math.sqrt(offset_m ** 2 + gain_m2) - offset_m;
}

/** White ice that frozen slush becomes, by mass: water swells, some air stays. */
export function whiteFromSlush_m(slush_m: number, matrix_kg_m3: number): number {
	return (slush_m * slush_kg_m3(matrix_kg_m3)) / WHITE_ICE_kg_m3;
}
