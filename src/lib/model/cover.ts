import { buoyancy_kg_m2, floodedSlush_m, localExcess_kg_m2 } from './flooding.ts';
import type { Forcing } from './forcing.ts';
import type { Parameters } from './parameters.ts';
import type { SiteIce } from './site-ice.ts';
import { slush_kg_m3, soakedSlush_m } from './slush.ts';
import type { StepRates } from './step-rates.ts';
import { addSnow, pack, removeSnow, settle, snowMass_kg_m2 } from './snow.ts';

/**
 * Adds what stays of the snow that falls, and lets the layer settle.
 *
 * Half of the fall comes before the settling and half after, so that its age is right in the mean.
 */
export function snowfall(ice: SiteIce, forcing: Forcing, rates: StepRates, p: Parameters): void {
	const half_kg_m2 = (forcing.snowfall_kg_m2 * p.snowKeptFraction) / 2;
	addSnow(ice, half_kg_m2, forcing.freshSnow_kg_m3);
	settle(ice, p.settledSnow_kg_m3, rates.unsettledFraction);
	pack(ice, p.wetting_kg_m2degCd * forcing.thawing_degCd, p.wetSnow_kg_m3);
	addSnow(ice, half_kg_m2, forcing.freshSnow_kg_m3);
}

/**
 * Wets and melts snow by degree-days, soaks what lies below, and returns the thaw left for the ice.
 *
 *   wetted W TDD,  melted M max(0, TDD - r FDD)
 *
 * Every warm hour wets and packs some snow; it melts for good only as far as the colder hours of
 * the same day do not freeze it again. Degree-day melt by [Hock2003] [M-hi], the two parts are ours.
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
export function flood(ice: SiteIce, rates: StepRates, p: Parameters): void {
	if (ice.snow_m <= 0) return;
	const density = slush_kg_m3(p.slushMatrix_kg_m3);
	const buoyancy = buoyancy_kg_m2(ice.clear_m, ice.white_m, ice.slush_m, density);
	const excess_kg_m2 = localExcess_kg_m2(snowMass_kg_m2(ice), buoyancy, p.snowSpreadFraction);
	toSlush(ice, rates.arrivedFraction * floodedSlush_m(excess_kg_m2, 0, p.slushMatrix_kg_m3), p);
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
