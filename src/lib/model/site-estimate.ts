import { anchorSteps, type AnchorStep } from './anchor-steps.ts';
import type { IsoDate } from './calendar.ts';
import { OPEN_WATER } from './column.ts';
import {
	estimate,
	type Bounds,
	type EstimatedDay,
	type EstimateOptions,
	type Kept
} from './ensemble/estimate.ts';
import type { IceOutWindow } from './ensemble/ice-out.ts';
import { meanFuture, type MeanDay } from './ensemble/mean-future.ts';
import type { SiteMemory } from './ensemble/memory.ts';
import { scenarios, type ScenarioWeather } from './ensemble/scenarios.ts';
import type { SeasonDay } from './season.ts';
import { sinceAnchor, type SinceAnchor } from './since-anchor.ts';
import type { SiteDay } from './site-day.ts';
import type { SiteSeason, SiteSeasonInput } from './site-season.ts';
import type { WeatherDay } from './weather.ts';

/** Members of the full set. */
export const MEMBERS = 400;
/** Futures that members share, a few members apiece: each a past winter with an error of its own. */
const MEMBERS_PER_FUTURE = 5;
const SEED = 2_718;

export interface SiteEstimateInput extends SiteSeasonInput, EstimateOptions {
	/** Observed days of earlier winters too; without it nothing is told past the known weather. */
	past?: readonly WeatherDay[];
	/** What past winters taught the site. */
	memory?: SiteMemory | null;
	members?: number;
	/** Changes to what may come, to ask what if. */
	bendFuture?: (scenario: ScenarioWeather) => ScenarioWeather;
}

/** What the ensemble has to say of a site. */
export interface SiteEstimate {
	/** By day; nothing for a day that is not estimated. */
	days: ReadonlyMap<IsoDate, EstimatedDay>;
	/** The season with the ensemble's columns and bounds, as far as weather is known. */
	known: SiteDay[];
	scenarios: ScenarioWeather[];
	future: ReadonlyMap<IsoDate, MeanDay>;
	iceOut: IceOutWindow | null;
	kept: Kept | null;
	anchors: AnchorStep[];
	/** Readings far from what was expected, and those of them that were thicker. */
	askedAbout: ReadonlySet<string>;
	tooThick: ReadonlySet<string>;
}

/** Runs a site's ensemble, once, over the days that are known and those that may come. */
export function siteEstimate(site: SiteSeason, input: SiteEstimateInput): SiteEstimate {
	const futures = futuresOf(site, input);
	const { freezeUp, events, readings } = site;
	const { days, iceOut, kept } = estimate(
		{
			lake: input.lake,
			freezeUpOn: freezeUp.first,
			freezeUpBy: freezeUp.last > freezeUp.first ? freezeUp.last : null,
			until: input.until > input.asOf ? input.until : input.asOf,
			weather: futures.length > 0 ? knownWeather(site, futures) : site.weather,
			scenarios: futures,
			events,
			readings,
			memory: input.memory ?? null,
			members: input.members ?? MEMBERS,
			seed: SEED,
			...(input.parameters ? { parameters: input.parameters } : {})
		},
		input
	);
	const accounts = sinceAnchor(site.days, readings);
	const gaps_m = gapsByDay(site.days, accounts);
	const byDay = new Map(
		days.map((day) => [
			day.on,
			openFrom(site.iceOutOn, { ...day, bound: lowered(day.bound, gaps_m(day.on)) })
		])
	);
	const asked = days.flatMap((day) => day.recalibrations.filter((each) => each.isAskedAbout));
	const idsOf = (each: typeof asked) => new Set(each.map(({ readingId }) => readingId));
	return {
		days: byDay,
		known: knownDays(site.days, accounts, byDay),
		scenarios: futures,
		future: meanFuture(futures, input.lake.latitude),
		iceOut,
		kept,
		anchors: anchorSteps(days),
		askedAbout: idsOf(asked),
		tooThick: idsOf(asked.filter(({ off }) => (off ?? 0) > 0))
	};
}

/** Nothing comes after weather that ends before the day of asking: a gap is no forecast. */
function futuresOf(site: SiteSeason, input: SiteEstimateInput): ScenarioWeather[] {
	const { asOf, until, past, lake, bendFuture, members = MEMBERS } = input;
	const isKnown = site.days.some((day) => day.on === asOf);
	if (past === undefined || until <= asOf || !isKnown) return [];
	const drawn = scenarios({
		lake,
		known: site.weather,
		past,
		asOf,
		until,
		count: Math.ceil(members / MEMBERS_PER_FUTURE),
		seed: SEED
	});
	return bendFuture ? drawn.map(bendFuture) : drawn;
}

/** What is not told by the futures. */
function knownWeather(site: SiteSeason, futures: readonly ScenarioWeather[]): WeatherDay[] {
	const from = futures[0]?.days[0]?.on;
	return from === undefined ? site.weather : site.weather.filter(({ on }) => on < from);
}

/** Days without a temperature take from the bounds all that they may have melted or failed to grow. */
function gapsByDay(
	days: readonly SeasonDay[],
	accounts: readonly SinceAnchor[]
): (on: IsoDate) => number {
	const known = new Map(days.map(({ on }, index) => [on, accounts[index]?.gaps_m ?? 0]));
	const last_m = accounts.at(-1)?.gaps_m ?? 0;
	return (on) => known.get(on) ?? last_m;
}

function lowered({ spot_m, fiveSpots_m, total_m }: Bounds, by_m: number): Bounds {
	return {
		spot_m: Math.max(0, spot_m - by_m),
		fiveSpots_m: Math.max(0, fiveSpots_m - by_m),
		total_m: Math.max(0, total_m - by_m)
	};
}

function knownDays(
	days: readonly SeasonDay[],
	accounts: readonly SinceAnchor[],
	estimated: ReadonlyMap<IsoDate, EstimatedDay>
): SiteDay[] {
	return days.flatMap((day, index) => {
		const [own, since] = [estimated.get(day.on), accounts[index]];
		return own && since ? [siteDay(day, own, since)] : [];
	});
}

function siteDay(day: SeasonDay, estimated: EstimatedDay, { gapDays }: SinceAnchor): SiteDay {
	const { liquidFraction } = day.column;
	const { quantiles, column, bound, site } = estimated;
	return {
		day: { ...day, column: { ...column, liquidFraction } },
		gapDays,
		effective_m: quantiles.effective_m.p50 ?? 0,
		bound,
		site
	};
}

/** From a recorded ice-out on there is no ice, whatever is estimated. */
function openFrom(iceOutOn: IsoDate | null, day: EstimatedDay): EstimatedDay {
	if (iceOutOn === null || day.on < iceOutOn) return day;
	const none = { p05: 0, p10: 0, p50: 0, p90: 0, p95: 0 };
	return {
		...day,
		quantiles: {
			clear_m: none,
			white_m: none,
			snow_m: none,
			slush_m: none,
			total_m: none,
			effective_m: none
		},
		spot_m: new Float64Array(day.spot_m.length),
		fiveSpots_m: new Float64Array(day.fiveSpots_m.length),
		bound: { spot_m: 0, fiveSpots_m: 0, total_m: 0 },
		column: OPEN_WATER,
		site: { mean_m: 0, sd_m: 0 }
	};
}
