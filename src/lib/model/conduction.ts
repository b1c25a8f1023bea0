import { CLEAR_ICE_FUSION_J_m3, CLEAR_ICE_W_mK, DAY_s, WHITE_ICE_W_mK } from './constants.ts';

/** α² of Stefan's law, 2 k/(ρ L) a day: α = 3.557 cm per √(°C·d). Source: [Stefan1891]. */
export const STEFAN_m2_degCd = (2 * CLEAR_ICE_W_mK * DAY_s) / CLEAR_ICE_FUSION_J_m3;

/**
 * Resistance of everything between clear ice and air: snow, white ice and the air film.
 *
 *   R = h_s/k_s + h_w/k_w + 1/H      m² K/W
 */
export function cover_m2K_W(
	snow_m: number,
	snow_W_mK: number,
	white_m: number,
	exchange_W_m2K: number
): number {
	const snow = snow_m > 0 ? snow_m / snow_W_mK : 0;
	return snow + white_m / WHITE_ICE_W_mK + 1 / exchange_W_m2K;
}

/**
 * Heat conducted from the water through the sheet to the air, zero in a thaw.
 *
 *   q = -T_air / (R_cover + h_c/k_i)
 *
 * Steady state: heat stored in the ice is ignored. Source: [Ashton1989], layers in series.
 */
export function conductedHeat_W_m2(air_degC: number, clear_m: number, cover_m2K_W: number): number {
	return Math.max(0, -air_degC) / (cover_m2K_W + clear_m / CLEAR_ICE_W_mK);
}

/**
 * Clear ice after some frost, no heat coming from the water; exact for a constant cover.
 *
 *   h' = -k R + sqrt((h + k R)² + 2 k FDD/(ρ L))
 *
 * One big step and many small ones agree. For the bare sheet R = 1/H. Source: [Ashton1989].
 * @example grownClear_m(0, 10, 1 / 20) // => 0.0467
 */
export function grownClear_m(start_m: number, freezing_degCd: number, cover_m2K_W: number): number {
	if (freezing_degCd <= 0) return start_m;
	const offset_m = CLEAR_ICE_W_mK * cover_m2K_W;
	const gain_m2 = STEFAN_m2_degCd * freezing_degCd;
	return Math.sqrt((start_m + offset_m) ** 2 + gain_m2) - offset_m;
}

/**
 * Frost that takes bare ice from nothing to a thickness: the closed form above, solved for FDD.
 *
 * @example frostToReach_degCd(0.1, 20) // => 25.6
 */
export function frostToReach_degCd(thickness_m: number, exchange_W_m2K: number): number {
	const offset_m = CLEAR_ICE_W_mK / exchange_W_m2K;
	return ((thickness_m + offset_m) ** 2 - offset_m ** 2) / STEFAN_m2_degCd;
}
