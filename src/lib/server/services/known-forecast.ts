import { addDays, type IsoDate } from '#lib/model/calendar.ts';
import { meanAir_degC } from '#lib/model/degree-days.ts';
import { completedBy } from '#lib/model/joined-day.ts';
import type { WeatherDay } from '#lib/model/weather.ts';
import type { Context } from '../context.ts';
import { readIssueTimes, readNewestIssuedDays, type IssuedDay } from '../storage/forecasts.ts';
import { warmerDay } from './elevation.ts';
import { localDay } from './local-day.ts';
import type { SourceOrigin, Trust } from './trust.ts';

/**
 * A forecast counts for so long after it was issued. Services issue one every 3 to 12 hours, so an
 * older one means that something failed. Our choice.
 */
export const FRESH_H = 24;

/** How far back forecasts of days that nobody observed are looked for. */
const LOOK_BACK_D = 15;
const LONGEST_AHEAD_D = 16;
const HOUR_MS = 3_600_000;

export interface KnownForecast {
	/** Sorted; of days after the last observed one. */
	days: WeatherDay[];
	/** The lake's day on which what counts for the days to come was issued, the oldest of several. */
	issuedOn: IsoDate | null;
	/** Of the most trusted source that has a fresh one, else the newest of all. */
	issuedAt: Date | null;
	/** The newest is too old to be used. */
	isOld: boolean;
}

/**
 * What was forecast by an instant for the days after `lastOn`. Days to come are taken from the newest
 * issue of a source alone, and only while that is fresh; a day that has passed and was not observed,
 * from the last issue made for it. Of several sources the more trusted stands.
 */
export async function knownForecast(
	{ db }: Context,
	{ origins, timeZone, latitude }: Trust,
	{ lastOn, by }: { lastOn: IsoDate | null; by: Date }
): Promise<KnownForecast> {
	const sources = origins.filter((origin) => origin.kind === 'source');
	const ids = sources.map(({ lakeSourceId }) => lakeSourceId);
	const newest = await readIssueTimes(db, ids, by);
	const issuedAt = issueToTell(ids, newest, by);
	if (issuedAt === null) return { days: [], issuedOn: null, issuedAt: null, isOld: false };
	const today = localDay(by, timeZone);
	const earliest = addDays(today, -LOOK_BACK_D);
	const dayAfter = lastOn === null ? earliest : addDays(lastOn, 1);
	const issued = await readNewestIssuedDays(db, ids, {
		after: new Date(by.getTime() - LOOK_BACK_D * 24 * HOUR_MS),
		by,
		from: dayAfter > earliest ? dayAfter : earliest,
		to: addDays(today, LONGEST_AHEAD_D)
	});
	const counting = issued.filter((each) =>
		each.day.on < today
			? isOfTheDay(each, timeZone)
			: isFresh(each.issuedAt, by) && isSame(each.issuedAt, newest.get(each.lakeSourceId))
	);
	const toCome = counting.filter(({ day }) => day.on >= today);
	const oldest = toCome
		.map((each) => each.issuedAt)
		.toSorted((a, b) => a.getTime() - b.getTime())[0];
	return {
		days: byTrust(counting, sources, latitude),
		issuedOn: oldest ? localDay(oldest, timeZone) : null,
		issuedAt,
		isOld: !isFresh(issuedAt, by)
	};
}

function issueToTell(
	ids: readonly number[],
	newest: ReadonlyMap<number, Date>,
	by: Date
): Date | null {
	const issues = ids.map((id) => newest.get(id)).filter((at) => at !== undefined);
	const latest = issues.toSorted((a, b) => b.getTime() - a.getTime())[0];
	return issues.find((at) => isFresh(at, by)) ?? latest ?? null;
}

/** What says that it was made later than now is not fresh: nobody knows how old it is. */
export function isFresh(issuedAt: Date, by: Date): boolean {
	const age_ms = by.getTime() - issuedAt.getTime();
	return age_ms >= 0 && age_ms <= FRESH_H * HOUR_MS;
}

function isSame(a: Date, b: Date | undefined): boolean {
	return a.getTime() === b?.getTime();
}

/** Made on the day itself or the day before. */
function isOfTheDay({ day, issuedAt }: IssuedDay, timeZone: string): boolean {
	return localDay(issuedAt, timeZone) >= addDays(day.on, -1);
}

function byTrust(
	issued: readonly IssuedDay[],
	sources: readonly SourceOrigin[],
	latitude: number
): WeatherDay[] {
	const days = new Map<IsoDate, WeatherDay>();
	for (const { lakeSourceId, forecastCorrection_K } of sources) {
		for (const each of issued.filter((one) => one.lakeSourceId === lakeSourceId)) {
			// The correction may have been switched since it was issued.
			const shift_K = forecastCorrection_K(each.place_m) - each.correction_K;
			const day: WeatherDay = { source: 'forecast', ...warmerDay(each.day, shift_K, latitude) };
			if (meanAir_degC(day) === null) continue;
			const before = days.get(day.on);
			days.set(day.on, before ? completedBy(before, day) : day);
		}
	}
	return [...days.values()].toSorted((a, b) => (a.on < b.on ? -1 : 1));
}
