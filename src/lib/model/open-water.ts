import { DAY_s } from './constants.ts';
import type { Forcing } from './forcing.ts';
import type { Parameters } from './parameters.ts';
import type { SiteIce } from './site-ice.ts';

const OPEN_ALBEDO = 0.07; // of calm water [M-hi]

/**
 * Stores warmth and sun in open water; frost takes them out again. Returns the share of the time
 * that is left for ice to form in.
 *
 * Snow that falls meanwhile melts in the water. The whole upper layer is one store, without exchange
 * with the deep.
 */
export function coolWater(ice: SiteIce, forcing: Forcing, p: Parameters): number {
	const perDegreeDay_J_m2 = p.exchange_W_m2K * DAY_s;
	const sun_W_m2 = forcing.sun_W_m2 * p.cloudFraction * (1 - OPEN_ALBEDO) * forcing.warmFraction;
	const warmth_J_m2 =
		ice.waterHeat_J_m2 +
		forcing.thawing_degCd * perDegreeDay_J_m2 +
		sun_W_m2 * forcing.duration_d * DAY_s;
	const left_degCd = forcing.freezing_degCd - warmth_J_m2 / perDegreeDay_J_m2;
	ice.waterHeat_J_m2 = Math.max(0, -left_degCd) * perDegreeDay_J_m2;
	return left_degCd > 0 ? left_degCd / forcing.freezing_degCd : 0;
}
