import { shareOf, type Forcing } from './forcing.ts';
import { flood, melt, rain, snowfall } from './cover.ts';
import { freeze, snowResistance_m2K_W } from './frost.ts';
import { coolWater } from './open-water.ts';
import type { Parameters } from './parameters.ts';
import { hasIce, type SiteIce } from './site-ice.ts';
import { FINER, stepRates, type DayRates, type StepRates } from './step-rates.ts';
import { thaw } from './thaw.ts';

const THIN_m = 0.1;

/**
 * Carries a site's ice through one day, in equal steps so that its processes act side by side;
 * in finer ones while the ice is thin or its snow is wet.
 *
 * Flooding and frost take turns in going first, which makes their mutual error second order in the
 * step; frost begins, so that the first ice floats the snow that falls on it.
 */
export function advanceDay(
	ice: SiteIce,
	day: Forcing,
	{ steps, coarse, fine }: DayRates,
	parameters: Parameters
): void {
	const isFine = isDelicate(ice, day);
	const parts = isFine ? FINER * steps : steps;
	const rates = isFine ? fine : coarse;
	const part = shareOf(day, 1 / parts);
	for (let i = 0; i < parts; i++) {
		if (hasIce(ice)) advance(ice, part, rates, parameters, i % 2 === 1);
		else freezeOver(ice, part, parameters);
	}
}

function isDelicate(ice: SiteIce, day: Forcing): boolean {
	if (ice.clear_m + ice.white_m < THIN_m) return hasIce(ice) || day.freezing_degCd > 0;
	return ice.snow_m > 0 && day.thawing_degCd > 0;
}

/** Ice and snow start together when the water has no warmth left, which took the step's thaw. */
function freezeOver(ice: SiteIce, forcing: Forcing, parameters: Parameters): void {
	const share = coolWater(ice, forcing, parameters);
	if (share <= 0) return;
	const rest = shareOf(forcing, share);
	rest.thawing_degCd = 0;
	advance(ice, rest, stepRates(rest, parameters), parameters, false);
}

function advance(
	ice: SiteIce,
	forcing: Forcing,
	rates: StepRates,
	parameters: Parameters,
	isFloodFirst: boolean
): void {
	const before_m2K_W = snowResistance_m2K_W(ice, rates.snowWarmth, parameters);
	snowfall(ice, forcing, rates, parameters);
	const thawLeft_degCd = melt(ice, forcing, parameters);
	rain(ice, forcing, parameters);
	if (isFloodFirst) flood(ice, rates, parameters);
	freeze(ice, before_m2K_W, forcing, rates, parameters);
	if (!isFloodFirst) flood(ice, rates, parameters);
	thaw(ice, thawLeft_degCd, forcing, parameters);
}
