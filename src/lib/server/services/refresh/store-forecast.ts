import type { Transaction } from 'kysely';
import { addDays } from '#lib/model/calendar.ts';
import { dayFromHours, type DayValues, type WeatherHour } from '#lib/model/hours-to-days.ts';
import { filledBy } from '#lib/model/joined-day.ts';
import type { Context } from '../../context.ts';
import { storeAsAsked } from '../../storage/as-asked.ts';
import { pruneIssues, storeIssue } from '../../storage/forecasts.ts';
import { refetchable } from '../../storage/refetchable.ts';
import type { Database } from '../../storage/schema.ts';
import {
	forgetHoursAfter,
	ROWS_AT_ONCE,
	readSourceHours,
	storeHours
} from '../../storage/source-weather.ts';
import type { SourceAnswer } from '../../weather/source/contract.ts';
import { warmerDay, warmerHours } from '../elevation.ts';
import { joinHours } from '../joining.ts';
import { daySpan, localDay } from '../local-day.ts';
import { readTrust, type Trust } from '../trust.ts';
import type { Storing } from './asking.ts';
import { cameFirstAt } from './same-issue.ts';

/** Keeps a forecast with the time it was issued; the day that runs is completed by what was measured. */
export async function storeForecast(
	ctx: Context,
	{ use, asked }: Storing,
	answer: Pick<SourceAnswer, 'hours' | 'days' | 'issuedAt' | 'station'>
): Promise<number | 'outdated'> {
	const { hours, days } = answer;
	if (hours.length + days.length === 0) return 0;
	const trust = await readTrust(ctx, use.lake_id);
	const origin = trust.origins.find(
		(each) => each.kind === 'source' && each.lakeSourceId === use.id
	);
	const place_m = answer.station?.elevation_m ?? null;
	const correction_K = origin?.kind === 'source' ? origin.forecastCorrection_K(place_m) : 0;
	const now = ctx.now();
	return refetchable(ctx.db, (db) =>
		storeAsAsked(db, asked, async (tx) => {
			const at = { now, latitude: trust.latitude };
			const first = await cameFirstAt(tx, use.id, answer, at);
			const issuedAt = earliest([now, answer.issuedAt, first]);
			const facts = { lakeSourceId: use.id, issuedAt, correction_K, place_m };
			// What an earlier issue told of them must not stand in for what this one leaves open.
			await forgetHoursAfter(tx, use.id, now);
			for (let at = 0; at < hours.length; at += ROWS_AT_ONCE) {
				await storeHours(tx, 'forecast_hour', use.id, hours.slice(at, at + ROWS_AT_ONCE));
			}
			const ofHours = await daysOfHours(tx, now, trust, use.id, hours.at(-1), correction_K);
			const told = days.map((day) => warmerDay(day, correction_K, trust.latitude));
			await storeIssue(tx, { ...facts, days: [...ofHours, ...told] });
			await pruneIssues(tx, use.id, now);
			return hours.length + days.length;
		})
	);
}

function earliest(times: readonly (Date | null)[]): Date {
	return new Date(Math.min(...times.map((at) => at?.getTime() ?? Infinity)));
}

/**
 * From today to the day of the last hour. What was forecast for today's hours before they ended
 * stands where nobody has measured them yet.
 */
async function daysOfHours(
	tx: Transaction<Database>,
	now: Date,
	trust: Trust,
	id: number,
	last: WeatherHour | undefined,
	correction_K: number
): Promise<DayValues[]> {
	if (last === undefined) return [];
	const first = daySpan(localDay(now, trust.timeZone), trust.timeZone);
	const measured = await joinHours(tx, trust, first.start_s, now.getTime() / 1000);
	const brought = await readSourceHours(tx, 'forecast_hour', [id], first.start_s, last.at_s + 1);
	const hours = filledBy(measured, warmerHours(brought.get(id) ?? [], correction_K));
	const days: DayValues[] = [];
	for (let span = first; span.start_s <= last.at_s;) {
		days.push(dayFromHours(span, hours));
		span = daySpan(addDays(span.on, 1), trust.timeZone);
	}
	return days;
}
