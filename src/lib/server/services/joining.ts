import { addDays, type IsoDate } from '#lib/model/calendar.ts';
import type { DaySpan, DayValues, WeatherHour } from '#lib/model/hours-to-days.ts';
import { joinedDay, type OriginDay } from '#lib/model/joined-day.ts';
import { withoutStuckAir, STUCK_h } from '#lib/model/stuck-air.ts';
import type { Context } from '../context.ts';
import { clearRejoin, readRejoin, writeJoinedDays } from '../storage/joined-days.ts';
import { readImportedDays, readWeatherHours } from '../storage/weather-days.ts';
import { readSourceDays, readSourceHours } from '../storage/source-weather.ts';
import { daySpan } from './local-day.ts';
import { nextTurn } from './next-turn.ts';
import { readTrust, type Origin, type Trust } from './trust.ts';
import { warmerDay, warmerHours } from './elevation.ts';

/** One read of some thousand hours: the server answers others in between. */
const DAYS_AT_A_TIME = 50;

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

async function joinAll(ctx: Context, lakeId: string): Promise<void> {
	for (;;) {
		const change = await readRejoin(ctx.db, lakeId);
		if (change === undefined) return;
		const trust = await readTrust(ctx, lakeId);
		// An hour of one calendar's day may lie in the next of another's.
		const last = addDays(change.to_day, 1);
		for (
			let from = addDays(change.from_day, -1);
			from <= last;
			from = addDays(from, DAYS_AT_A_TIME)
		) {
			const to = addDays(from, DAYS_AT_A_TIME - 1);
			const days = await joinDays(ctx.db, trust, from, to < last ? to : last);
			await writeJoinedDays(ctx.db, lakeId, from, to < last ? to : last, days);
			await nextTurn();
		}
		await clearRejoin(ctx.db, change);
	}
}

/** What the origins of a lake say of its days, both ends included, each of them joined to one. */
export async function joinDays(
	db: Context['db'],
	trust: Trust,
	from: IsoDate,
	to: IsoDate
): Promise<DayValues[]> {
	const { origins, timeZone } = trust;
	const spans = spansOf(from, to, timeZone);
	const told = await readOrigins(db, trust, spans);
	const takers = origins.map((origin) => takeByDay(told.get(origin)));
	return spans.flatMap((span) => {
		const day = joinedDay(
			span,
			takers.map((take) => take(span))
		);
		if (day === null) return [];
		const { source: _, ...values } = day;
		return [values];
	});
}

function spansOf(from: IsoDate, to: IsoDate, timeZone: string): DaySpan[] {
	const spans: DaySpan[] = [];
	for (let on = from; on <= to; on = addDays(on, 1)) spans.push(daySpan(on, timeZone));
	return spans;
}

interface Told {
	hours: readonly WeatherHour[];
	days: readonly DayValues[];
}

/** Hours and days of each origin, those of sources corrected; a stuck station says nothing. */
async function readOrigins(
	db: Context['db'],
	{ lakeId, origins, latitude }: Trust,
	spans: readonly DaySpan[]
): Promise<Map<Origin, Told>> {
	const [first, last] = [spans.at(0), spans.at(-1)];
	if (first === undefined || last === undefined) return new Map();
	const ids = origins.flatMap((origin) => (origin.kind === 'source' ? [origin.lakeSourceId] : []));
	// A run of one value is seen whole only with what lies before and after.
	const margin_s = STUCK_h * 3600;
	const around = [first.start_s - margin_s, last.end_s + margin_s] as const;
	const hours = await readSourceHours(db, 'source_hour', ids, ...around);
	const days = await readSourceDays(db, ids, first.on, last.on);
	const told = new Map<Origin, Told>();
	for (const origin of origins) {
		if (origin.kind === 'csv') {
			const imported = await readWeatherHours(db, lakeId, first.start_s, last.end_s);
			const daily = await readImportedDays(db, lakeId, first.on, last.on);
			told.set(origin, { hours: imported, days: daily });
			continue;
		}
		const { lakeSourceId, correction_K } = origin;
		const running = withoutStuckAir(hours.get(lakeSourceId) ?? []);
		told.set(origin, {
			hours: warmerHours(
				running.filter(({ at_s }) => at_s >= first.start_s),
				correction_K
			),
			days: (days.get(lakeSourceId) ?? []).map((day) => warmerDay(day, correction_K, latitude))
		});
	}
	return told;
}

/** Hands out what is told of one day after the other; all is sorted. */
function takeByDay({ hours, days }: Told = { hours: [], days: [] }): (span: DaySpan) => OriginDay {
	let next = 0;
	const daily = new Map(days.map((day) => [day.on, day]));
	return ({ on, end_s }) => {
		const first = next;
		while ((hours[next]?.at_s ?? Infinity) < end_s) next++;
		return { hours: hours.slice(first, next), daily: daily.get(on) ?? null };
	};
}
