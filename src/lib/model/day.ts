import type { Forcing } from './forcing.ts';
import { flood, melt, rain, snowfall } from './cover.ts';
import { freeze } from './frost.ts';
import { openWater } from './open-water.ts';
import type { Parameters } from './parameters.ts';
import { hasIce, type SiteIce } from './site-ice.ts';
import { thaw } from './thaw.ts';

/**
 * Carries a site's ice through one day, in equal steps so that its processes act side by side.
 *
 * The order within a step is that of the column, from the top down.
 */
export function advanceDay(
	ice: SiteIce,
	day: Forcing,
	parameters: Parameters,
	steps: number
): void {
	const part = shareOf(day, steps);
	for (let i = 0; i < steps; i++) {
		if (hasIce(ice)) advance(ice, part, parameters);
		else openWater(ice, part, parameters);
	}
}

function shareOf(day: Forcing, steps: number): Forcing {
	return {
		...day,
		duration_d: day.duration_d / steps,
		freezing_degCd: day.freezing_degCd / steps,
		thawing_degCd: day.thawing_degCd / steps,
		snowfall_kg_m2: day.snowfall_kg_m2 / steps,
		rain_kg_m2: day.rain_kg_m2 / steps
	};
}

function advance(ice: SiteIce, forcing: Forcing, parameters: Parameters): void {
	const before = { snow_m: ice.snow_m, snowDensity_kg_m3: ice.snowDensity_kg_m3 };
	snowfall(ice, forcing, parameters);
	const thawLeft_degCd = melt(ice, forcing, parameters);
	rain(ice, forcing, parameters);
	flood(ice, forcing, parameters);
	freeze(ice, before, forcing, parameters);
	thaw(ice, thawLeft_degCd, forcing, parameters);
}
