import { anchorSteps, type AnchorStep } from './anchor-steps.ts';
import type { IsoDate } from './calendar.ts';
import {
	estimateSteps,
	type Estimate,
	type EstimatedDay,
	type EstimateOptions,
	type Kept
} from './ensemble/estimate.ts';
import type { Loss } from './ensemble/loss.ts';
import type { IceOutWindow } from './ensemble/ice-out.ts';
import { meanFuture, type MeanDay } from './ensemble/mean-future.ts';
import type { SiteMemory } from './ensemble/memory.ts';
import type { EnsembleInput } from './ensemble/run.ts';
import { scenarios, type ScenarioWeather } from './ensemble/scenarios.ts';
import { knownDays, recordedDays } from './recorded-days.ts';
import { gapsByDay, sinceAnchor, type SinceAnchor } from './since-anchor.ts';
import type { SiteDay } from './site-day.ts';
import type { SiteSeason, SiteSeasonInput } from './site-season.ts';
import { finish, type Steps } from './steps.ts';
import type { ClearingPlan } from './tracks/clearing-plan.ts';
import type { WeatherDay } from './weather.ts';

/** Members of the full set. */
export const MEMBERS = 400;
/** Futures that members share, a few members apiece: each a past winter with an error of its own. */
const MEMBERS_PER_FUTURE = 5;
const SEED = 2_718;

export interface SiteEstimateInput extends SiteSeasonInput, EstimateOptions {
	/** Observed days of earlier winters too; without it nothing is told past the known weather. */
	past?: readonly WeatherDay[];
	/** The day on which the forecast among the weather was issued, where it is known. */
	forecastIssuedOn?: IsoDate | null;
	/** What past winters taught the site. */
	memory?: SiteMemory | null;
	members?: number;
	/** Clearing that is only thought of, from the day after that of asking on. */
	plan?: ClearingPlan;
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
	/** By the day of asking. */
	loss: Loss | null;
	kept: Kept | null;
	anchors: AnchorStep[];
	/** Readings far from what was expected, and those of them that were thicker. */
	askedAbout: ReadonlySet<string>;
	tooThick: ReadonlySet<string>;
}

/** Runs a site's ensemble, once, over the days that are known and those that may come. */
export function siteEstimate(site: SiteSeason, input: SiteEstimateInput): SiteEstimate {
	return finish(siteEstimateSteps(site, input));
}

/** The same in steps. */
export function* siteEstimateSteps(
	site: SiteSeason,
	input: SiteEstimateInput
): Steps<SiteEstimate> {
	const futures = futuresOf(site, input);
	const accounts = sinceAnchor(site.days, site.readings);
	const gapsOn = gapsByDay(site.days, accounts);
	const options = { ...input, lossOn: input.asOf, gapsOn };
	const told = yield* estimateSteps(ensembleOf(site, input, futures), options);
	return ofSite(site, accounts, futures, { ...told, latitude: input.lake.latitude });
}

/** The run up to the day of asking, for others to go on from. */
export function* keptEstimateSteps(site: SiteSeason, input: SiteEstimateInput): Steps<Kept | null> {
	const ensemble = ensembleOf(site, input, futuresOf(site, input));
	const { asOf } = input;
	const gapsOn = gapsByDay(site.days, sinceAnchor(site.days, site.readings));
	return (yield* estimateSteps({ ...ensemble, until: asOf }, { keepOn: asOf, gapsOn })).kept;
}

function ensembleOf(
	{ freezeUp, events, readings, weather }: SiteSeason,
	input: SiteEstimateInput,
	futures: readonly ScenarioWeather[]
): EnsembleInput {
	return {
		lake: input.lake,
		freezeUpOn: freezeUp.first,
		freezeUpBy: freezeUp.last > freezeUp.first ? freezeUp.last : null,
		until: input.until > input.asOf ? input.until : input.asOf,
		weather: futures.length > 0 ? knownWeather(weather, futures) : weather,
		scenarios: futures,
		events,
		readings,
		memory: input.memory ?? null,
		members: input.members ?? MEMBERS,
		seed: SEED,
		...(input.plan ? { plan: input.plan } : {}),
		...(input.parameters ? { parameters: input.parameters } : {})
	};
}

function ofSite(
	site: SiteSeason,
	accounts: readonly SinceAnchor[],
	futures: ScenarioWeather[],
	{ days, iceOut, loss, kept, latitude }: Estimate & { latitude: number }
): SiteEstimate {
	const byDay = recordedDays(days, site.iceOutOn);
	const asked = days.flatMap((day) => day.recalibrations.filter((each) => each.isAskedAbout));
	const idsOf = (each: typeof asked) => new Set(each.map(({ readingId }) => readingId));
	return {
		days: byDay,
		known: knownDays(site.days, accounts, byDay),
		scenarios: futures,
		future: meanFuture(futures, latitude),
		iceOut,
		loss,
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
	const isToldAhead = until > asOf || isForecastBefore(site.weather, asOf);
	if (past === undefined || !isToldAhead || !isKnown) return [];
	const drawn = scenarios({
		lake,
		known: site.weather,
		past,
		asOf,
		until,
		issuedOn: input.forecastIssuedOn ?? null,
		count: Math.ceil(members / MEMBERS_PER_FUTURE),
		seed: SEED
	});
	return bendFuture ? drawn.map(bendFuture) : drawn;
}

/** Days before `asOf` that were only forecast are as uncertain as any that is. */
export function isForecastBefore(weather: readonly WeatherDay[], asOf: IsoDate): boolean {
	return weather.some((day) => day.source === 'forecast' && day.on < asOf);
}

/** What is not told by the futures. */
function knownWeather(
	weather: readonly WeatherDay[],
	futures: readonly ScenarioWeather[]
): readonly WeatherDay[] {
	const from = futures[0]?.days[0]?.on;
	return from === undefined ? weather : weather.filter(({ on }) => on < from);
}
