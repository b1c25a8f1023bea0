import { addDays, type IsoDate } from '../calendar.ts';
import { moreSnow } from '../ensemble/what-if.ts';
import type { Forecast, Quantiles } from '../forecast.ts';
import { meanAir_degC } from '../degree-days.ts';
import type { OutlookInput } from '../outlook.ts';
import { thinSince } from '../since/thin-since.ts';
import { siteEstimateSteps } from '../site-estimate.ts';
import { siteSeason } from '../site-season.ts';
import { snowShare } from '../snow.ts';
import type { Steps } from '../steps.ts';
import type { WeatherDay } from '../weather.ts';

/** Less than this a forecast does not tell as snow. */
const HARDLY_ANY_kg_m2 = 0.5;

/** What the snow in a forecast does to the ice by its end. */
export interface SnowEffect {
	/** The day that is compared: the one after the forecast's last, at its start. */
	on: IsoDate;
	/** Snow that is forecast, as water. */
	fall_kg_m2: number;
	/** Whole ice with it, and if none of it fell. */
	with: Pair;
	without: Pair;
}

interface Pair {
	/** What one hole in ten falls short of. */
	p10_m: number;
	p50_m: number;
	/** Lower bound to go by: p10 at most. */
	bound_m: number;
}

/**
 * The outlook beside the same without the forecast's snow: the same members, the same temperatures.
 * `null` where hardly any is forecast, or nothing is estimated. A run of its own, to the forecast's end.
 */
export function* snowEffectSteps(
	input: OutlookInput,
	forecast: Forecast,
	forecastTo: IsoDate
): Steps<SnowEffect | null> {
	const on = addDays(forecastTo, 1);
	const fall_kg_m2 = input.weather
		.filter((day) => day.source === 'forecast' && day.on <= forecastTo)
		.reduce((sum, day) => sum + snowOf(day), 0);
	const site = siteSeason(input);
	if (site === null || fall_kg_m2 < HARDLY_ANY_kg_m2) return null;
	const estimate = yield* siteEstimateSteps(site, {
		...input,
		bendFuture: ({ days, from }) => ({
			from,
			days: days.filter((day) => day.on <= forecastTo).map(withoutForecastSnow)
		})
	});
	const { asOf, since = null } = input;
	const seen = since === null ? estimate : thinSince(estimate, asOf, since);
	const told = forecast.days.find((day) => day.on === on);
	const with_ = told && pairOf(told.total_m, told.bound?.total_m);
	const bare = seen.days.get(on);
	const without = bare && pairOf(bare.quantiles.total_m, bare.bound.total_m);
	return with_ && without ? { on, fall_kg_m2, with: with_, without } : null;
}

function snowOf(day: WeatherDay): number {
	if (day.snowfall_kg_m2 !== null) return day.snowfall_kg_m2;
	return (day.precipitation_kg_m2 ?? 0) * snowShare(meanAir_degC(day) ?? 0);
}

function withoutForecastSnow(day: WeatherDay): WeatherDay {
	return day.source === 'forecast' ? moreSnow(day, 0) : day;
}

function pairOf({ p10, p50 }: Quantiles, bound_m = 0): Pair | null {
	return p10 === null || p50 === null ? null : { p10_m: p10, p50_m: p50, bound_m };
}
