import { grownClear_m } from './conduction.ts';
import { DAY_s } from './constants.ts';
import type { Forcing } from './forcing.ts';
import type { Parameters } from './parameters.ts';
import type { SiteIce } from './site-ice.ts';

const OPEN_ALBEDO = 0.07; // of calm water [M-hi]

/**
 * Stores warmth and sun in open water; frost takes them out again and then makes ice.
 *
 * Snow that falls on it is gone. The whole upper layer is one store, without exchange with the deep.
 */
export function openWater(ice: SiteIce, forcing: Forcing, p: Parameters): void {
	const perDegreeDay_J_m2 = p.exchange_W_m2K * DAY_s;
	const sun_W_m2 = forcing.sun_W_m2 * p.cloudFraction * (1 - OPEN_ALBEDO) * forcing.warmFraction;
	const warmth_J_m2 =
		ice.waterHeat_J_m2 +
		forcing.thawing_degCd * perDegreeDay_J_m2 +
		sun_W_m2 * forcing.duration_d * DAY_s;
	const left_J_m2 = forcing.freezing_degCd * perDegreeDay_J_m2 - warmth_J_m2;
	ice.waterHeat_J_m2 = Math.max(0, -left_J_m2);
	if (left_J_m2 > 0)
		ice.clear_m = grownClear_m(0, left_J_m2 / perDegreeDay_J_m2, 1 / p.exchange_W_m2K);
}
