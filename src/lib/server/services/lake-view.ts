import { winterSpan, type IsoDate, type WinterId } from '#lib/model/calendar.ts';
import type { LoadCase } from '#lib/model/load-case.ts';
import type { Outlook, OutlookInput } from '#lib/model/outlook.ts';
import type { Reading } from '#lib/model/reading.ts';
import { isForecastBefore } from '#lib/model/site-estimate.ts';
import type { SiteWinter } from '#lib/model/site-winter.ts';
import type { TrackRecord } from '#lib/model/tracks/track-winter.ts';
import type { WeatherDay } from '#lib/model/weather.ts';
import { METRIC_WORDS, type Words } from '#lib/model/words.ts';
import type { Context } from '../context.ts';
import { readLastObservedDay, readWeatherDays } from '../storage/weather-days.ts';
import { listWeakSpotRows } from '../storage/weak-spots.ts';
import { chartMinimums } from './charts.ts';
import { getLake, type LakeRecord } from './lakes.ts';
import { localDay } from './local-day.ts';
import { listLoads } from './own-loads.ts';
import { outlookInQuiet, outlookOf } from './outlooks.ts';
import { publishedView } from './published-views.ts';
import { withoutRunningDay } from './running-day.ts';
import { seenSince } from './seen-since.ts';
import { shownIds } from './shown-loads.ts';
import { siteMemory } from './site-memory.ts';
import { siteWinterOf } from './site-records.ts';
import { getSite, MAIN_SITE, type SiteRecord } from './sites.ts';
import { defaultAsOf, isPresent, lastTold, winterToShow, type AskedDays } from './view-days.ts';
import { summarizeWeather, type WeatherSummary } from './weather-summary.ts';
import { knownWeather, type KnownWeather, type WeatherUpkeep } from './weather-upkeep.ts';
import { WhileUnchanged } from './while-unchanged.ts';
import { listWinters } from './winters.ts';
import { wordsSample } from './words-sample.ts';

export interface LakeView {
	lake: LakeRecord;
	site: string;
	winter: WinterId;
	/** Winters that have anything on record, newest first. */
	winters: WinterId[];
	/** Today at the lake. */
	today: IsoDate;
	asOf: IsoDate;
	/** What has been seen since `asOf` counts too: a view of the past knows nothing of it. */
	isPresent: boolean;
	status: 'ok' | 'noWeather' | 'noFreezeUp' | 'beforeFreezeUp';
	/** As the site's ice went through it: a track's begins with its parent's. */
	record: SiteWinter;
	readings: Reading[];
	/** All of them, as the estimate has them. */
	loads: LoadCase[];
	/** Ids of those that the lake's pages show. */
	shown: string[];
	outlook: Outlook | null;
	weather: WeatherSummary;
	/** How old the weather is, whose it is, and what is wrong with it. */
	upkeep: WeatherUpkeep;
	/** It stood before what has come in since, which the estimate is not made of yet. */
	standsIn?: true;
}

export interface ViewOptions extends AskedDays {
	site?: string;
	/** How numbers enter the texts; metric without. */
	words?: Words;
}

/** Views that are kept; each shares its half megabyte with the kept outlooks. */
const KEPT = 120;

const unchanged = new WhileUnchanged<LakeView>(KEPT);

/** All that is known and estimated of a site's winter. @throws LakeNotFound, SiteNotFound */
export async function lakeView(
	ctx: Context,
	lakeId: string,
	options: ViewOptions = {}
): Promise<LakeView> {
	const key = keyOf(lakeId, options);
	return unchanged.oneAtATime(ctx, lakeId, key, async ({ keep }) => {
		const { known, input } = await gather(ctx, lakeId, options);
		return publishedView(ctx, key, known, async (isQuiet) => {
			const view = viewOf(known, await (isQuiet ? outlookInQuiet(input) : outlookOf(input)));
			keep(view);
			return view;
		});
	});
}

/** The view with what it is made from; never one that stood before. @throws LakeNotFound, SiteNotFound */
export async function viewWithInput(
	ctx: Context,
	lakeId: string,
	options: ViewOptions = {}
): Promise<{ view: LakeView; input: OutlookInput }> {
	const { known, input } = await gather(ctx, lakeId, options);
	return { view: viewOf(known, await outlookOf(input)), input };
}

function keyOf(lakeId: string, { words, ...asked }: ViewOptions): string {
	return JSON.stringify([lakeId, asked, words && wordsSample(words)]);
}

function viewOf(known: Known, estimate: Outlook | null): LakeView {
	const status = statusOf(known.record, known.weather, estimate);
	return { ...known, status, outlook: status === 'ok' ? estimate : null };
}

/** The same of what is stored now, made when it is asked for and behind all that somebody waits for. */
export interface QuietView {
	/** What the estimate is made from: the same input makes the same one. */
	input: OutlookInput;
	make: () => Promise<LakeView>;
}

/** For work that nobody waits for. @throws LakeNotFound, SiteNotFound */
export async function quietView(
	ctx: Context,
	lakeId: string,
	options: ViewOptions = {}
): Promise<QuietView> {
	const { known, input } = await gather(ctx, lakeId, options);
	return { input, make: async () => viewOf(known, await outlookInQuiet(input)) };
}

/** What the estimate is made from, for whoever runs the model anew. @throws LakeNotFound, SiteNotFound */
export async function outlookInput(
	ctx: Context,
	lakeId: string,
	options: ViewOptions = {}
): Promise<OutlookInput> {
	return (await gather(ctx, lakeId, options)).input;
}

/** A view without its estimate. */
type Known = Omit<LakeView, 'status' | 'outlook'>;

async function gather(
	ctx: Context,
	lakeId: string,
	options: ViewOptions
): Promise<{ known: Known; input: OutlookInput }> {
	const lake = await getLake(ctx, lakeId);
	const site = options.site ?? MAIN_SITE;
	const today = lake.today ?? localDay(ctx.now(), lake.timeZone);
	const winters = await listWinters(ctx, lakeId, site);
	const winter = options.winter ?? winterToShow(winters, today, options.asOf);
	const siteRecord = await getSite(ctx, lakeId, site);
	const ice = await siteWinterOf(ctx, lakeId, siteRecord, winter);
	const stored = await readWeatherDays(ctx.db, lakeId, ...winterSpan(winter));
	const days = withoutRunningDay(ctx, lake, stored);
	const asOf = options.asOf ?? defaultAsOf(ice.record, days, today);
	const loads = await listLoads(ctx, lakeId);
	const isNow = isPresent(options, winter, today);
	const weather = await knownWeather(ctx, lake, {
		observed: days,
		asOf,
		isPresent: isNow,
		words: options.words ?? METRIC_WORDS
	});
	const known: Known = {
		lake,
		site,
		winter,
		winters,
		today,
		asOf,
		isPresent: isNow,
		record: ice.record,
		readings: ice.readings,
		loads,
		shown: await shownIds(ctx, lakeId, loads),
		weather: summarizeWeather(days, await readLastObservedDay(ctx.db, lakeId), today),
		upkeep: weather.upkeep
	};
	return { known, input: await inputOf(ctx, options, known, { siteRecord, ice, weather }) };
}

interface Sources {
	siteRecord: SiteRecord;
	ice: TrackRecord;
	weather: KnownWeather;
}

/** What the model is given of all that is known. */
async function inputOf(
	ctx: Context,
	options: ViewOptions,
	{ lake, site, winter, winters, today, asOf, isPresent: isNow, record, readings, loads }: Known,
	{ siteRecord, ice, weather }: Sources
): Promise<OutlookInput> {
	const until = lastTold(options, record, asOf, isNow && today > asOf ? today : asOf);
	const earlier = winters.filter((each) => each < winter);
	const isWorked = ice.workedOn.some((on) => on <= (isNow ? today : asOf));
	return {
		lakeId: lake.id,
		site,
		lake,
		record,
		weather: weather.days,
		forecastIssuedOn: weather.forecastIssuedOn,
		readings: readings.filter(({ on }) => on <= asOf),
		drilledElsewhere: isWorked ? ice.fromParent : [],
		weakSpots: (await listWeakSpotRows(ctx.db, lake.id)).map(({ name }) => name),
		loads,
		minimums: chartMinimums,
		chartSet: lake.chartSet,
		asOf,
		until,
		memory: await siteMemory(ctx, lake.id, siteRecord, lake, earlier),
		...(until > asOf || isForecastBefore(weather.days, asOf)
			? { past: await pastWeather(ctx, lake.id, winter, asOf) }
			: {}),
		since: isNow
			? seenSince({ asOf, today, timeZone: lake.timeZone, record, readings, known: weather })
			: null,
		...(options.words ? { words: options.words } : {})
	};
}

/** Earlier winters whose weather may come again: as many years as a climate is told by. */
const PAST_WINTERS = 30;

async function pastWeather(
	ctx: Context,
	lakeId: string,
	winter: WinterId,
	asOf: IsoDate
): Promise<WeatherDay[]> {
	const from = `${Number(winter.slice(0, 4)) - PAST_WINTERS}-07-01`;
	return readWeatherDays(ctx.db, lakeId, from, asOf);
}

function statusOf(
	record: SiteWinter,
	weather: WeatherSummary,
	estimate: Outlook | null
): LakeView['status'] {
	if (weather.to === null) return 'noWeather';
	if (record.freezeUpOn === null) return 'noFreezeUp';
	return estimate ? 'ok' : 'beforeFreezeUp';
}
