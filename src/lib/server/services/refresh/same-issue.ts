import type { Kysely } from 'kysely';
import { addDays } from '#lib/model/calendar.ts';
import type { DayValues, WeatherHour } from '#lib/model/hours-to-days.ts';
import { readIssuedDays, readIssueTimes } from '../../storage/forecasts.ts';
import type { Database } from '../../storage/schema.ts';
import { readSourceHours } from '../../storage/source-weather.ts';
import { overBy, type SourceAnswer } from '../../weather/source/contract.ts';
import { warmerDay } from '../elevation.ts';
import { daySpan } from '../local-day.ts';

type Content = Pick<SourceAnswer, 'hours' | 'days'>;

/**
 * When a forecast came for the first time, whatever it says itself; `null` where it is new. It is the
 * same when every hour or day that both tell is told alike: services that make a new one never hit all
 * values of the last one again. Some stamp each answer with the time at which they sent it.
 */
export async function cameFirstAt(
	db: Kysely<Database>,
	useId: number,
	{ hours, days }: Content,
	{ now, latitude }: { now: Date; latitude: number }
): Promise<Date | null> {
	const newest = (await readIssueTimes(db, [useId], now)).get(useId);
	if (!newest) return null;
	const isSame =
		(await isSameHours(db, useId, hours)) &&
		(await isSameDays(db, useId, days, newest, latitude)) &&
		hours.length + days.length > 0;
	return isSame ? newest : null;
}

/**
 * What of the history may be taken for observed that came with a forecast in one answer: nothing of the
 * time after that answer was made, by when it came first. One that says that it is newer is believed
 * where it tells otherwise of the time since than was forecast: then that was measured.
 */
export async function observedBeside(
	db: Kysely<Database>,
	useId: number,
	history: SourceAnswer,
	forecast: SourceAnswer,
	{ now, latitude, timeZone }: { now: Date; latitude: number; timeZone: string }
): Promise<SourceAnswer> {
	if (forecast.outcome !== 'ok') return history;
	const first = await cameFirstAt(db, useId, forecast, { now, latitude });
	if (!first) return history;
	// By the source's own calendar a day may end almost a day later than by the lake's.
	const ends_s = history.days.map(
		({ on }) => [on, daySpan(addDays(on, 1), timeZone).end_s] as const
	);
	const observed = overBy(history, new Map(ends_s), first);
	if (forecast.isIssueTold) {
		const hours = history.hours.slice(observed.hours.length);
		const days = history.days.slice(observed.days.length);
		const isForecast =
			(await isSameHours(db, useId, hours)) && (await isSameDays(db, useId, days, first, latitude));
		if (!isForecast) return history;
	}
	return { ...history, ...observed };
}

async function isSameHours(
	db: Kysely<Database>,
	useId: number,
	hours: readonly WeatherHour[]
): Promise<boolean> {
	const [first, last] = [hours.at(0), hours.at(-1)];
	if (!first || !last) return true;
	const span = [first.at_s, last.at_s + 1] as const;
	const before = (await readSourceHours(db, 'forecast_hour', [useId], ...span)).get(useId) ?? [];
	return isAlike(hours, before, ({ at_s }) => at_s);
}

async function isSameDays(
	db: Kysely<Database>,
	useId: number,
	days: readonly DayValues[],
	newest: Date,
	latitude: number
): Promise<boolean> {
	const [first, last] = [days.at(0), days.at(-1)];
	if (!first || !last) return true;
	const span = { after: new Date(newest.getTime() - 1), by: newest, from: first.on, to: last.on };
	const before = await readIssuedDays(db, [useId], { ...span, to: addDays(last.on, 1) });
	const correction_K = before[0]?.correction_K ?? 0;
	const ours = days.map((day) => warmerDay(day, correction_K, latitude));
	return isAlike(
		ours,
		before.map(({ day }) => day),
		({ on }) => on
	);
}

/** Whether they have times in common, and say the same of all of these. */
function isAlike<Time extends object>(
	ours: readonly Time[],
	theirs: readonly Time[],
	keyOf: (time: Time) => string | number
): boolean {
	const known = new Map(theirs.map((time) => [keyOf(time), time]));
	const common = ours.flatMap((time) => {
		const other = known.get(keyOf(time));
		return other ? [[time, other] as const] : [];
	});
	return common.length > 0 && common.every(([a, b]) => isEqual(a, b));
}

function isEqual<Time extends object>(a: Time, b: Time): boolean {
	const names = Object.keys(a) as (keyof Time)[];
	return names.every((name) => a[name] === b[name]);
}
