import { buoyancy_kg_m2, localExcess_kg_m2 } from './flooding.ts';
import type { Forcing } from './forcing.ts';
import type { Parameters } from './parameters.ts';
import type { SiteIce } from './site-ice.ts';
import { slush_kg_m3, soakedSlush_m } from './slush.ts';
import { addSnow, removeSnow, settle, snowMass_kg_m2 } from './snow.ts';

/** Adds what stays of the snow that falls, and lets the layer settle. */
export function snowfall(ice: SiteIce, forcing: Forcing, p: Parameters): void {
	addSnow(ice, forcing.snowfall_kg_m2 * p.snowKeptFraction, forcing.freshSnow_kg_m3);
	settle(ice, p.settledSnow_kg_m3, p.settling_h, forcing.duration_d * 24);
}

/**
 * Melts snow by degree-days, soaks what lies below with the water, and returns the thaw left for
 * the ice.
 *
 *   M = DDF max(0, TDD - r FDD)
 *
 * What the colder hours of the same day freeze again is taken off. Source: [Hock2003] [M-hi]; the
 * refreezing term as in degree-day snow models, for a day as a whole.
 */
export function melt(ice: SiteIce, forcing: Forcing, p: Parameters): number {
	const lasting_degCd = forcing.thawing_degCd - p.refreezeFraction * forcing.freezing_degCd;
	if (lasting_degCd <= 0) return 0;
	if (ice.snow_m <= 0) return lasting_degCd;
	const melt_kg_m2 = Math.min(snowMass_kg_m2(ice), p.snowMelt_kg_m2degCd * lasting_degCd);
	removeSnow(ice, melt_kg_m2);
	soak(ice, melt_kg_m2, p);
	return lasting_degCd - melt_kg_m2 / p.snowMelt_kg_m2degCd;
}

/** Soaks the snow with rain; on bare ice it runs off. */
export function rain(ice: SiteIce, forcing: Forcing, p: Parameters): void {
	if (forcing.rain_kg_m2 > 0) soak(ice, forcing.rain_kg_m2, p);
}

/** Lets water up through cracks, over some days, where snow weighs more than the sheet can float. */
export function flood(ice: SiteIce, forcing: Forcing, p: Parameters): void {
	if (ice.snow_m <= 0) return;
	const density = slush_kg_m3(p.slushMatrix_kg_m3);
	const buoyancy = buoyancy_kg_m2(ice.clear_m, ice.white_m, ice.slush_m, density);
	const excess = localExcess_kg_m2(snowMass_kg_m2(ice), buoyancy, p.snowSpreadFraction);
	const arrived = 1 - Math.exp(-forcing.duration_d / p.flooding_d);
	toSlush(ice, (excess * arrived) / p.slushMatrix_kg_m3, p);
}

function soak(ice: SiteIce, water_kg_m2: number, p: Parameters): void {
	if (ice.snow_m <= 0) return;
	const staying_kg_m2 = p.soakedFraction * water_kg_m2;
	toSlush(ice, soakedSlush_m(staying_kg_m2, snowMass_kg_m2(ice), p.slushMatrix_kg_m3), p);
}

function toSlush(ice: SiteIce, slush_m: number, p: Parameters): void {
	const possible_m = Math.min(slush_m, snowMass_kg_m2(ice) / p.slushMatrix_kg_m3);
	removeSnow(ice, possible_m * p.slushMatrix_kg_m3);
	ice.slush_m += possible_m;
}
