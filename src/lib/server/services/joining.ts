import { addDays, daysBetween, type IsoDate } from '#lib/model/calendar.ts';
import type { DaySpan, DayValues, WeatherHour } from '#lib/model/hours-to-days.ts';
import { filledBy, joinedDay, type OriginDay } from '#lib/model/joined-day.ts';
import type { Context } from '../context.ts';
import { clearRejoin, readRejoin, writeJoinedDays } from '../storage/joined-days.ts';
import { refetchable } from '../storage/refetchable.ts';
import type { RejoinTable } from '../storage/source-schema.ts';
import { daySpan } from './local-day.ts';
import { nextTurn } from './next-turn.ts';
import { readOriginDays, readOriginHours } from './origin-weather.ts';
import { readTrust, type Trust } from './trust.ts';

/** One read of some thousand hours: the server answers others in between. */
const DAYS_AT_A_TIME = 30;

/** Of each database, the joining that is under way by lake. */
const underWay = new WeakMap<Context['db'], Map<string, Promise<void>>>();

/**
 * Joins anew the days whose weather or whose order of trust has changed. Every change awaits this;
 * readers call it as well, so that nothing stays behind where a change was cut short.
 */
export async function joinChanged(ctx: Context, lakeId: string): Promise<void> {
	if ((await readRejoin(ctx.db, lakeId)) === undefined) return;
	const ofDatabase = underWay.get(ctx.db) ?? new Map<string, Promise<void>>();
	underWay.set(ctx.db, ofDatabase);
	const before = ofDatabase.get(lakeId) ?? Promise.resolve();
	// A change may have come after what is under way had read its days.
	const work = before.catch(() => {}).then(() => joinAll(ctx, lakeId));
	ofDatabase.set(lakeId, work);
	try {
		await work;
	} finally {
		if (ofDatabase.get(lakeId) === work) ofDatabase.delete(lakeId);
	}
}

/** A reader of so many days or fewer need not wait for decades that are joined anew. */
const SHORT_D = 400;

/**
 * The joined days of a short span, both ends included, made for the reader from all that is stored now,
 * while a change elsewhere is still being joined; `null` where nothing is, or the span is long. Nothing
 * of it is stored: a change may come before it would be, and must not be overwritten by what was before.
 */
export async function joinedMeanwhile(
	ctx: Context,
	lakeId: string,
	from: IsoDate,
	to: IsoDate
): Promise<DayValues[] | null> {
	if (daysBetween(from, to) > SHORT_D || from > to) return null;
	if ((await readRejoin(ctx.db, lakeId)) === undefined) return null;
	const trust = await readTrust(ctx, lakeId);
	const days: DayValues[] = [];
	for (let start = from; start <= to; start = addDays(start, DAYS_AT_A_TIME)) {
		const end = addDays(start, DAYS_AT_A_TIME - 1);
		days.push(...(await joinDays(ctx.db, trust, start, end < to ? end : to)));
	}
	return days;
}

async function joinAll(ctx: Context, lakeId: string): Promise<void> {
	for (;;) {
		const change = await readRejoin(ctx.db, lakeId);
		if (change === undefined) return;
		if (await joinChange(ctx, change)) await refetchable(ctx.db, (db) => clearRejoin(db, change));
	}
}

/** False as soon as there is another change to be joined. */
async function joinChange(ctx: Context, change: RejoinTable): Promise<boolean> {
	const trust = await readTrust(ctx, change.lake_id);
	// An hour of one calendar's day may lie in the next of another's.
	const last = addDays(change.to_day, 1);
	for (
		let from = addDays(change.from_day, -1);
		from <= last;
		from = addDays(from, DAYS_AT_A_TIME)
	) {
		const to = addDays(from, DAYS_AT_A_TIME - 1);
		const end = to < last ? to : last;
		const days = await joinDays(ctx.db, trust, from, end);
		const isWritten = await refetchable(ctx.db, (db) =>
			writeJoinedDays(db, change, from, end, days)
		);
		if (!isWritten) return false;
		await nextTurn();
	}
	return true;
}

/** What the origins of a lake say of its days, both ends included, each of them joined to one. */
export async function joinDays(
	db: Context['db'],
	trust: Trust,
	from: IsoDate,
	to: IsoDate
): Promise<DayValues[]> {
	const spans = spansOf(from, to, trust.timeZone);
	const [from_s, to_s] = [spans.at(0)?.start_s ?? 0, spans.at(-1)?.end_s ?? 0];
	const hours = await readOriginHours(db, trust, from_s, to_s);
	const days = await readOriginDays(db, trust, from, to);
	const takers = trust.origins.map((origin) => takeByDay(hours.get(origin), days.get(origin)));
	return spans.flatMap((span) => {
		const day = joinedDay(
			span,
			takers.map((take) => take(span)),
			trust.latitude
		);
		if (day === null) return [];
		const { source: _, ...values } = day;
		return [values];
	});
}

/** The hours from `from_s` to before `to_s`, each value from the most trusted origin that has it. */
export async function joinHours(
	db: Context['db'],
	trust: Trust,
	from_s: number,
	to_s: number
): Promise<WeatherHour[]> {
	const hours = await readOriginHours(db, trust, from_s, to_s);
	return trust.origins.reduce<WeatherHour[]>(
		(joined, origin) => filledBy(joined, hours.get(origin) ?? []),
		[]
	);
}

function spansOf(from: IsoDate, to: IsoDate, timeZone: string): DaySpan[] {
	const spans: DaySpan[] = [];
	for (let on = from; on <= to; on = addDays(on, 1)) spans.push(daySpan(on, timeZone));
	return spans;
}

/** Hands out what is told of one day after the other; all is sorted. */
function takeByDay(
	hours: readonly WeatherHour[] = [],
	days: readonly DayValues[] = []
): (span: DaySpan) => OriginDay {
	let next = 0;
	const daily = new Map(days.map((day) => [day.on, day]));
	return ({ on, end_s }) => {
		const first = next;
		while ((hours[next]?.at_s ?? Infinity) < end_s) next++;
		return { hours: hours.slice(first, next), daily: daily.get(on) ?? null };
	};
}
