import { addDays } from '#lib/model/calendar.ts';
import { dayFromHours, type DayValues, type WeatherHour } from '#lib/model/hours-to-days.ts';
import { filledBy } from '#lib/model/joined-day.ts';
import type { Context } from '../../context.ts';
import { pruneIssues, storeIssue } from '../../storage/forecasts.ts';
import { refetchable } from '../../storage/refetchable.ts';
import { ROWS_AT_ONCE, readSourceHours, storeHours } from '../../storage/source-weather.ts';
import type { SourceAnswer } from '../../weather/source/contract.ts';
import { warmerDay, warmerHours } from '../elevation.ts';
import { joinHours } from '../joining.ts';
import { daySpan, localDay } from '../local-day.ts';
import { readTrust, type Trust } from '../trust.ts';

/** Keeps a forecast with the time it was issued; the day that runs is completed by what was measured. */
export async function storeForecast(
	ctx: Context,
	use: { id: number; lake_id: string },
	answer: Pick<SourceAnswer, 'hours' | 'days' | 'issuedAt' | 'station'>
): Promise<number> {
	const { hours, days } = answer;
	if (hours.length + days.length === 0) return 0;
	const trust = await readTrust(ctx, use.lake_id);
	const origin = trust.origins.find(
		(each) => each.kind === 'source' && each.lakeSourceId === use.id
	);
	const place_m = answer.station?.elevation_m ?? null;
	const correction_K = origin?.kind === 'source' ? origin.forecastCorrection_K(place_m) : 0;
	await refetchable(ctx.db, async (db) => {
		for (let at = 0; at < hours.length; at += ROWS_AT_ONCE) {
			await storeHours(db, 'forecast_hour', use.id, hours.slice(at, at + ROWS_AT_ONCE));
		}
	});
	const now = ctx.now();
	const told = [
		...(await daysOfHours(ctx, trust, use.id, hours.at(-1), correction_K)),
		...days.map((day) => warmerDay(day, correction_K, trust.latitude))
	];
	const issuedAt = answer.issuedAt ?? now;
	await refetchable(ctx.db, async (db) => {
		await storeIssue(db, { lakeSourceId: use.id, issuedAt, correction_K, place_m, days: told });
		await pruneIssues(db, use.id, now);
	});
	return hours.length + days.length;
}

/**
 * From today to the day of the last hour. What was forecast for today's hours before they ended
 * stands where nobody has measured them yet.
 */
async function daysOfHours(
	ctx: Context,
	trust: Trust,
	id: number,
	last: WeatherHour | undefined,
	correction_K: number
): Promise<DayValues[]> {
	if (last === undefined) return [];
	const now = ctx.now();
	const first = daySpan(localDay(now, trust.timeZone), trust.timeZone);
	const measured = await joinHours(ctx.db, trust, first.start_s, now.getTime() / 1000);
	const brought = await readSourceHours(
		ctx.db,
		'forecast_hour',
		[id],
		first.start_s,
		last.at_s + 1
	);
	const hours = filledBy(measured, warmerHours(brought.get(id) ?? [], correction_K));
	const days: DayValues[] = [];
	for (let span = first; span.start_s <= last.at_s;) {
		days.push(dayFromHours(span, hours));
		span = daySpan(addDays(span.on, 1), trust.timeZone);
	}
	return days;
}
