import { conductedHeat_W_m2, cover_m2K_W, STEFAN_m2_degCd } from '../conduction.ts';
import { CLEAR_ICE_FUSION_J_m3, CLEAR_ICE_W_mK, DAY_s } from '../constants.ts';
import { WHITE_ICE_FRACTION } from '../bearing.ts';
import { landSnow_W_mK } from '../snow.ts';

/** A sheet of ice under snow, and what passes heat to it. */
export interface Sheet {
	clear_m: number;
	white_m: number;
	snow_m: number;
	snowDensity_kg_m3: number;
	/** Heat that the air takes from the surface, per degree. */
	exchange_W_m2K: number;
	/** Conductivity of the lake's snow, in that of land snow of the same density. */
	snowConductivityRatio: number;
	waterHeat_W_m2: number;
}

/**
 * Growth of clear ice in a day of steady frost, nothing below 0.
 *
 *   dh/dt = (q - q_w)/(ρ L),  q = -T/(h_s/k_s + h_w/k_w + h_c/k_i + 1/H)
 *
 * Layers in series, [Ashton1989]. Without slush on the ice: while there is any, frost goes into it.
 * @example growthRate_m_d(bare 20 cm, H 20, q_w 0, -10 °C) // => 0.0203
 */
export function growthRate_m_d(sheet: Sheet, air_degC: number): number {
	const heat_W_m2 =
		conductedHeat_W_m2(air_degC, sheet.clear_m, coverOf(sheet)) - sheet.waterHeat_W_m2;
	return Math.max(0, (heat_W_m2 * DAY_s) / CLEAR_ICE_FUSION_J_m3);
}

/**
 * Frost that brings a sheet to an effective thickness under the snow it has now, 0 where it has it.
 *
 *   FDD = ((h + k R)² - (h0 + k R)²)/α²
 *
 * The closed form of thin-ice growth [Ashton1989] solved for frost. Heat from the water and losses to
 * the sky, which about cancel early on, are left out; more snow makes it more, no snow less.
 */
export function frostToGo_degCd(sheet: Sheet, effective_m: number): number {
	const target_m = effective_m - WHITE_ICE_FRACTION * sheet.white_m;
	if (target_m <= sheet.clear_m) return 0;
	const offset_m = CLEAR_ICE_W_mK * coverOf(sheet);
	return ((target_m + offset_m) ** 2 - (sheet.clear_m + offset_m) ** 2) / STEFAN_m2_degCd;
}

function coverOf(sheet: Sheet): number {
	const snow_W_mK = landSnow_W_mK(sheet.snowDensity_kg_m3) * sheet.snowConductivityRatio;
	return cover_m2K_W(sheet.snow_m, snow_W_mK, sheet.white_m, sheet.exchange_W_m2K);
}
