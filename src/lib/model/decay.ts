import { CLEAR_ICE_FUSION_J_m3, FUSION_J_kg, WHITE_ICE_kg_m3 } from './constants.ts';
import type { IceColumn } from './column.ts';
import type { Parameters } from './parameters.ts';

const SNOW_EXTINCTION_1_m = 20; // of settled snow, range 10 to 40 [M-med]
const HIDING_WHITE_m = 0.03; // white ice that hides the clear ice below from the sun [M-lo]
const COVERING_SNOW_m = 0.02; // snow that makes the surface look like snow [M-lo]

/** Melt of ice at the top by warm air, negative: Δh = -m TDD. Source: degree-day practice [M-med]. */
export function airMelt_m(melt_m_degCd: number, thawing_degCd: number): number {
	return -melt_m_degCd * Math.max(0, thawing_degCd);
}

/** An air exchange expressed as a melt coefficient, H·86400/(ρ L). @example 20 W/m²K => 0.565 cm */
export function exchangeAsMelt_m_degCd(exchange_W_m2K: number): number {
	return (exchange_W_m2K * 86_400) / CLEAR_ICE_FUSION_J_m3;
}

/**
 * Part of the sunshine on the lake that gets into the ice.
 *
 *   (1 - a) exp(-κ h_s)
 *
 * The albedo a goes from that of the ice (white or clear on top) to that of snow over the first 2 cm
 * of snow. Albedos by [Bolsenga1969] and handbooks [M-med].
 */
export function absorbedFraction(column: IceColumn, p: Parameters): number {
	const hiding = Math.min(1, column.white_m / HIDING_WHITE_m);
	const iceAlbedo = p.clearAlbedo + (p.whiteAlbedo - p.clearAlbedo) * hiding;
	const covered = Math.min(1, column.snow_m / COVERING_SNOW_m);
	const albedo = iceAlbedo + (p.snowAlbedo - iceAlbedo) * covered;
	return (1 - albedo) * Math.exp(-SNOW_EXTINCTION_1_m * column.snow_m);
}

/**
 * The column after its top has lost some heat's worth of slush, white and clear ice, in that order.
 *
 * Ice that holds water inside needs less heat for the same depth.
 */
export function meltTop(column: IceColumn, heat_J_m2: number, matrix_kg_m3: number): IceColumn {
	if (heat_J_m2 <= 0) return column;
	const solid = Math.max(0.1, 1 - column.liquidFraction);
	let left = heat_J_m2;
	const take = (depth_m: number, heat_J_m3: number): number => {
		const melted_m = Math.min(depth_m, left / heat_J_m3);
		left -= melted_m * heat_J_m3;
		return depth_m - melted_m;
	};
	const slush_m = take(column.slush_m, matrix_kg_m3 * FUSION_J_kg);
	const white_m = take(column.white_m, WHITE_ICE_kg_m3 * FUSION_J_kg * solid);
	const clear_m = take(column.clear_m, CLEAR_ICE_FUSION_J_m3 * solid);
	return { ...column, slush_m, white_m, clear_m };
}

/**
 * Liquid fraction after sunshine has been absorbed inside: Δn = heat/(ρ L h).
 *
 * Melt at the grain boundaries, which goes on in frost as well. Source: [Ashton1985] [M-med].
 */
export function rottedFraction(column: IceColumn, inside_J_m2: number): number {
	const thickness_m = column.clear_m + column.white_m;
	if (thickness_m <= 0) return 0;
	const melted = inside_J_m2 / (CLEAR_ICE_FUSION_J_m3 * Math.max(0.02, thickness_m));
	return Math.min(1, column.liquidFraction + melted);
}
