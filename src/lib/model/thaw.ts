import { CLEAR_ICE_FUSION_J_m3, DAY_s } from './constants.ts';
import { absorbedFraction, meltBottom, meltTop, rot } from './decay.ts';
import type { Forcing } from './forcing.ts';
import type { Parameters } from './parameters.ts';
import { hasIce, openSite, type SiteIce } from './site-ice.ts';

const ROTTEN_FRACTION = 0.3; // liquid share from which a thin sheet no longer holds together [M-lo]

/**
 * Spends a step's warmth and sun, the snow having taken its part: melt at the top by degree-days, with
 * what the sun adds and the sky takes there, rotting inside and melt from below at any temperature, and
 * the end when thin rotten ice breaks up.
 */
export function thaw(ice: SiteIce, thawing_degCd: number, forcing: Forcing, p: Parameters): void {
	const sun_W_m2 = forcing.sun_W_m2 * p.cloudFraction * absorbedFraction(ice, p);
	const duration_s = forcing.duration_d * DAY_s;
	const air_J_m2 = thawing_degCd * p.iceMelt_m_degCd * CLEAR_ICE_FUSION_J_m3;
	meltTop(ice, air_J_m2, p);
	meltBottom(ice, sun_W_m2 * p.belowFraction * duration_s);
	rot(ice, sun_W_m2 * p.insideFraction * duration_s);
	const sound_m = (ice.clear_m + ice.white_m) * (1 - ice.liquidFraction);
	const isBroken = ice.liquidFraction > ROTTEN_FRACTION && sound_m < p.breakUp_m;
	if (isBroken || !hasIce(ice)) Object.assign(ice, openSite());
}
