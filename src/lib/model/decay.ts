import { CLEAR_ICE_FUSION_J_m3, FUSION_J_kg, WHITE_ICE_kg_m3 } from './constants.ts';
import type { IceColumn } from './column.ts';
import type { Parameters } from './parameters.ts';
import type { SiteIce } from './site-ice.ts';

const SNOW_EXTINCTION_1_m = 20; // of settled snow, range 10 to 40 [M-med]
const HIDING_WHITE_m = 0.03; // white ice that hides the clear ice below from the sun [M-lo]
const COVERING_SNOW_m = 0.02; // snow that makes the surface look like snow [M-lo]
const LEAST_SOLID = 0.1; // keeps melt of wholly rotten ice finite
const THINNEST_m = 0.02; // a thinner sheet lets most of the sun through

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
 * Takes the depth that some heat melts off the top: slush, then white, then clear ice.
 *
 * Ice that holds water inside needs less heat for the same depth.
 */
export function meltTop(ice: SiteIce, heat_J_m2: number, p: Parameters): void {
	if (heat_J_m2 <= 0) return;
	const solid = Math.max(LEAST_SOLID, 1 - ice.liquidFraction);
	let left_J_m2 = heat_J_m2;
	const slush = p.slushMatrix_kg_m3 * FUSION_J_kg;
	const slush_m = Math.min(ice.slush_m, left_J_m2 / slush);
	left_J_m2 -= slush_m * slush;
	const white = WHITE_ICE_kg_m3 * FUSION_J_kg * solid;
	const white_m = Math.min(ice.white_m, left_J_m2 / white);
	left_J_m2 -= white_m * white;
	ice.slush_m -= slush_m;
	ice.white_m -= white_m;
	ice.clear_m = Math.max(0, ice.clear_m - left_J_m2 / (CLEAR_ICE_FUSION_J_m3 * solid));
}

/**
 * Takes the depth that some heat of the water melts off the underside: clear, then white ice.
 *
 * Sun that shines through bare ice warms the water below, which gives the heat back. Observed in
 * spring, after up to half of the sheet has gone from the top [GowGovoni1983] [R].
 */
export function meltBottom(ice: SiteIce, heat_J_m2: number): void {
	const melted_m = heat_J_m2 / CLEAR_ICE_FUSION_J_m3;
	const white_m = Math.max(0, melted_m - ice.clear_m);
	ice.clear_m = Math.max(0, ice.clear_m - melted_m);
	ice.white_m = Math.max(0, ice.white_m - white_m);
}

/**
 * Raises the liquid fraction by sunshine absorbed inside: Δn = heat/(ρ L h).
 *
 * Melt at the grain boundaries, which goes on in frost as well. Source: [Ashton1985] [M-med].
 */
export function rot(ice: SiteIce, inside_J_m2: number): void {
	const thickness_m = ice.clear_m + ice.white_m;
	if (thickness_m <= 0) return;
	const melted = inside_J_m2 / (CLEAR_ICE_FUSION_J_m3 * Math.max(THINNEST_m, thickness_m));
	ice.liquidFraction = Math.min(1, ice.liquidFraction + melted);
}
