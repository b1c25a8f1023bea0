import { daysBetween, type IsoDate } from '#lib/model/calendar.ts';
import type { Caution } from '#lib/model/forecast.ts';
import type { WeatherHour } from '#lib/model/hours-to-days.ts';
import { unbrokenTo_s } from '#lib/model/since/part-day.ts';
import { withWarmHours } from '#lib/model/warm-hours.ts';
import type { WeatherDay } from '#lib/model/weather.ts';
import type { Words } from '#lib/model/words.ts';
import type { Context } from '../context.ts';
import { listLakeSourceRows } from '../storage/lake-sources.ts';
import { joinHours } from './joining.ts';
import { knownForecast, type KnownForecast } from './known-forecast.ts';
import type { LakeRecord } from './lakes.ts';
import { daySpan } from './local-day.ts';
import { attributionsOf, type Attribution } from './sources/attributions.ts';
import { readTrust, type Trust } from './trust.ts';
import { upkeepSentences } from './upkeep-sentences.ts';

/** How old the weather is that a view goes by, and whose it is. */
export interface WeatherUpkeep {
	/** When the newest forecast was issued, though it be too old to be used. */
	forecastIssuedAt: Date | null;
	forecastAge_h: number | null;
	/** Whether it is used: not when it is too old. */
	isForecastUsed: boolean;
	/** The last day that it tells. */
	forecastTo: IsoDate | null;
	/**
	 * The end of what was observed without a break, which is what a status is made from: of hours after
	 * the last whole day those that are no more than three apart.
	 */
	lastObservedAt: Date | null;
	lastObservedAge_h: number | null;
	/** To be shown where the weather is. */
	attributions: Attribution[];
	/** What is wrong with the weather, and what to do. */
	sentences: Caution[];
}

export interface KnownWeather {
	/** What was observed up to the day asked for, and what was forecast after it. Sorted. */
	days: WeatherDay[];
	forecastIssuedOn: IsoDate | null;
	/** The instant up to which all was known. */
	by: Date;
	/** Observed hours from the last whole day's on, sorted. */
	hours: WeatherHour[];
	upkeep: WeatherUpkeep;
}

export interface Asked {
	/** Observed days of the winter, sorted. */
	observed: readonly WeatherDay[];
	asOf: IsoDate;
	/** A view of the present knows what has come in since. */
	isPresent: boolean;
	/** How numbers enter the sentences. */
	words: Words;
}

const HOUR_MS = 3_600_000;
/** How far back hours are looked for where there is no whole day. */
const LATEST_S = 168 * 3600;

/** The weather that was known for a view, with its ages. Later days were not observed yet. */
export async function knownWeather(
	ctx: Context,
	lake: LakeRecord,
	asked: Asked
): Promise<KnownWeather> {
	const trust = await readTrust(ctx, lake.id);
	const by = instantOf(ctx, lake, asked);
	const observed = asked.observed.filter(({ on }) => on <= asked.asOf);
	const lastOn = observed.findLast(({ air_degC }) => air_degC !== null)?.on ?? null;
	const forecast = await knownForecast(ctx, trust, { lastOn, by });
	const hours = await latestHours(ctx, trust, by, lastOn);
	return {
		days: joined(observed, forecast.days, lake.latitude),
		forecastIssuedOn: forecast.issuedOn,
		by,
		hours,
		upkeep: await upkeepOf(ctx, trust, {
			by,
			observed,
			lastOn,
			forecast,
			hours,
			words: asked.words
		})
	};
}

/** What was known by: of the present everything, of a past day what had come by its end. */
function instantOf(ctx: Context, { today, timeZone }: LakeRecord, asked: Asked): Date {
	const end = (on: IsoDate) => new Date(daySpan(on, timeZone).end_s * 1000);
	const ends = [...(today ? [end(today)] : []), ...(asked.isPresent ? [] : [end(asked.asOf)])];
	return [ctx.now(), ...ends].toSorted((a, b) => a.getTime() - b.getTime())[0] ?? ctx.now();
}

/** A day observed without a temperature gives way to its forecast, and keeps what fell and was warm. */
function joined(
	observed: readonly WeatherDay[],
	forecast: readonly WeatherDay[],
	latitude: number
): WeatherDay[] {
	const days = new Map(observed.map((day) => [day.on, day]));
	for (const day of forecast) {
		const seen = days.get(day.on) ?? day;
		const { precipitation_kg_m2, snowfall_kg_m2 } = seen;
		const hasFall = precipitation_kg_m2 !== null || snowfall_kg_m2 !== null;
		const whole = hasFall ? { ...day, precipitation_kg_m2, snowfall_kg_m2 } : day;
		days.set(day.on, withWarmHours(whole, seen.aboveFreezing_h ?? 0, latitude));
	}
	return [...days.values()].toSorted((a, b) => (a.on < b.on ? -1 : 1));
}

interface Known {
	by: Date;
	observed: readonly WeatherDay[];
	lastOn: IsoDate | null;
	forecast: KnownForecast;
	hours: readonly WeatherHour[];
	words: Words;
}

async function upkeepOf(ctx: Context, trust: Trust, known: Known): Promise<WeatherUpkeep> {
	const { by, forecast } = known;
	const uses = await listLakeSourceRows(ctx.db, trust.lakeId);
	const lastObservedAt = lastObserved(trust, known);
	const last = forecast.days.at(-1)?.on ?? null;
	return {
		forecastIssuedAt: forecast.issuedAt,
		forecastAge_h: forecast.issuedAt && age_h(forecast.issuedAt, by),
		isForecastUsed: forecast.issuedOn !== null,
		forecastTo: forecast.issuedOn === null ? null : last,
		lastObservedAt,
		lastObservedAge_h: lastObservedAt && age_h(lastObservedAt, by),
		attributions: await attributionsOf(ctx, uses),
		sentences: await upkeepSentences(ctx, uses, { ...known, trust, latestDays: latest(known) })
	};
}

/** The days of the last week observed. */
function latest({ observed, lastOn }: Known): WeatherDay[] {
	return observed.filter(({ on }) => lastOn !== null && daysBetween(on, lastOn) < 7);
}

/** Hours from the last whole day on; where there is none, of the last week. */
async function latestHours(
	{ db }: Context,
	trust: Trust,
	by: Date,
	lastOn: IsoDate | null
): Promise<WeatherHour[]> {
	const by_s = by.getTime() / 1000;
	const from_s = lastOn === null ? by_s - LATEST_S : daySpan(lastOn, trust.timeZone).start_s;
	return from_s >= by_s ? [] : joinHours(db, trust, from_s, by_s);
}

function lastObserved({ timeZone }: Trust, { by, lastOn, hours }: Known): Date | null {
	const by_s = by.getTime() / 1000;
	const withAir = hours.filter(({ air_degC }) => air_degC !== null);
	if (lastOn === null) {
		const last = withAir.at(-1);
		return last ? new Date(Math.min(by_s, last.at_s + 3600) * 1000) : null;
	}
	const { end_s } = daySpan(lastOn, timeZone);
	return new Date(Math.min(by_s, unbrokenTo_s(withAir, wholeTo_s(withAir, end_s))) * 1000);
}

/** A day is whole before its last hours are in: then it is known to the last that is. */
function wholeTo_s(withAir: readonly WeatherHour[], end_s: number): number {
	const last = withAir.findLast(({ at_s }) => at_s < end_s);
	const hasLater = withAir.some(({ at_s }) => at_s >= end_s);
	return last === undefined || hasLater ? end_s : Math.min(end_s, last.at_s + 3600);
}

/** Whole hours, rounded down: an age is never told shorter by a rounding of half an hour. */
function age_h(at: Date, by: Date): number {
	return Math.max(0, Math.floor((by.getTime() - at.getTime()) / HOUR_MS));
}
