import { meanAir_degC } from '../degree-days.ts';
import type { Forecast } from '../forecast.ts';
import type { LoadCase } from '../load-case.ts';
import { outlookSteps, type OutlookInput } from '../outlook.ts';
import { keptEstimateSteps } from '../site-estimate.ts';
import { siteSeason } from '../site-season.ts';
import { snowShare } from '../snow.ts';
import { finish, type Steps } from '../steps.ts';
import type { WeatherDay } from '../weather.ts';
import type { Kept } from './estimate.ts';
import { shiftDay } from './shifted-day.ts';

/** What to try from the day of asking on. */
export interface Change {
	/** Times the snow that lies on the ice, and that falls later: 0 cleared, 1 as it is, 2 double. */
	snowFactor: number;
	/** Added to the temperature of days to come. */
	warming_K: number;
	/** So many of them; all without it. */
	warmingDays?: number;
	/** Snow that falls at once on the first of them, on top of all else. */
	snowfall_kg_m2?: number;
	extraLoad: LoadCase | null;
}

/**
 * The forecast if the snow on the ice, the weather to come or the load were another; `null` where there
 * is no estimate. The same draws as without a change: what differs is the change alone.
 *
 * The run up to the day of asking is kept with the input, so that every change after the first only
 * costs the days to come.
 */
export function whatIf(input: OutlookInput, change: Change, members: number): Forecast | null {
	return finish(whatIfSteps(input, change, members));
}

/** The same in steps. */
export function* whatIfSteps(
	input: OutlookInput,
	change: Change,
	members: number
): Steps<Forecast | null> {
	const { loads, past = [] } = input;
	const { snowFactor, extraLoad } = change;
	const kept = yield* keptSteps(input, members);
	const answer = yield* outlookSteps({
		...input,
		past,
		members,
		loads: extraLoad === null ? loads : [...loads, extraLoad],
		bendFuture: ({ days, from }) => ({
			from,
			days: days.map((day, index) => bent(day, index, change, input.lake.latitude))
		}),
		...(kept ? { resume: withSnow(kept, snowFactor) } : {})
	});
	return answer?.forecast ?? null;
}

function bent(day: WeatherDay, index: number, change: Change, latitude: number): WeatherDay {
	const { snowFactor, warming_K, warmingDays = Infinity, snowfall_kg_m2 = 0 } = change;
	const shifted = shiftDay(day, index < warmingDays ? warming_K : 0, latitude);
	const factored = moreSnow(shifted, snowFactor);
	return index === 0 && snowfall_kg_m2 > 0 ? withFall(factored, snowfall_kg_m2) : factored;
}

const runs = new WeakMap<OutlookInput, Map<number, Kept | null>>();

function* keptSteps(input: OutlookInput, members: number): Steps<Kept | null> {
	const own = runs.get(input) ?? new Map<number, Kept | null>();
	runs.set(input, own);
	const known = own.get(members);
	if (known !== undefined) return known;
	const site = siteSeason(input);
	const kept =
		site === null
			? null
			: yield* keptEstimateSteps(site, { ...input, past: input.past ?? [], members });
	own.set(members, kept);
	return kept;
}

function withSnow({ start, ...others }: Kept, factor: number): Kept {
	const { ensemble } = start;
	const snow_m = ensemble.members.snow_m.map((depth_m) => depth_m * factor);
	const members = { ...ensemble.members, snow_m };
	return { ...others, start: { ...start, ensemble: { ...ensemble, members } } };
}

/** The day with a snowfall on top of what falls. */
function withFall(day: WeatherDay, fall_kg_m2: number): WeatherDay {
	const all_kg_m2 = day.precipitation_kg_m2 ?? day.snowfall_kg_m2 ?? 0;
	const snow_kg_m2 = day.snowfall_kg_m2 ?? all_kg_m2 * snowShare(meanAir_degC(day) ?? 0);
	return {
		...day,
		snowfall_kg_m2: snow_kg_m2 + fall_kg_m2,
		precipitation_kg_m2: all_kg_m2 + fall_kg_m2
	};
}

/** The day with more or less snow and as much rain. */
export function moreSnow(day: WeatherDay, factor: number): WeatherDay {
	const all_kg_m2 = day.precipitation_kg_m2 ?? day.snowfall_kg_m2;
	if (all_kg_m2 === null || factor === 1) return day;
	const snow_kg_m2 = day.snowfall_kg_m2 ?? all_kg_m2 * snowShare(meanAir_degC(day) ?? 0);
	const rain_kg_m2 = Math.max(0, all_kg_m2 - snow_kg_m2);
	return {
		...day,
		snowfall_kg_m2: factor * snow_kg_m2,
		precipitation_kg_m2: rain_kg_m2 + factor * snow_kg_m2
	};
}
