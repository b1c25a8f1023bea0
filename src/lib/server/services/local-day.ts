import { TZDate, tzOffset } from '@date-fns/tz';
import findTimeZone from '@photostructure/tz-lookup';
import { addDays, type IsoDate } from '#lib/model/calendar.ts';
import type { DaySpan } from '#lib/model/hours-to-days.ts';

/** The lake's own calendar day at an instant. */
export function localDay(at: Date, timeZone: string): IsoDate {
	const shifted_ms = at.getTime() + tzOffset(timeZone, at) * 60_000;
	return new Date(shifted_ms).toISOString().slice(0, 10);
}

/** The lake's own day and clock at an instant, to the minute. */
export function localMinute(at: Date, timeZone: string): { on: IsoDate; clock: string } {
	const shifted_ms = at.getTime() + tzOffset(timeZone, at) * 60_000;
	const text = new Date(shifted_ms).toISOString();
	return { on: text.slice(0, 10), clock: text.slice(11, 16) };
}

/** When the day begins and ends on the clock. Days with a clock change have 23 or 25 hours. */
export function daySpan(on: IsoDate, timeZone: string): DaySpan {
	return { on, start_s: startOfDay_s(on, timeZone), end_s: startOfDay_s(addDays(on, 1), timeZone) };
}

function startOfDay_s(on: IsoDate, timeZone: string): number {
	const [year = NaN, month = NaN, day = NaN] = on.split('-').map(Number);
	return new TZDate(year, month - 1, day, timeZone).getTime() / 1000;
}

/** The time zone of a position. */
export function timeZoneAt(latitude: number, longitude: number): string {
	return findTimeZone(latitude, longitude);
}

/** True for an IANA name that this machine knows. */
export function isTimeZone(text: string): boolean {
	try {
		return new Intl.DateTimeFormat('en', { timeZone: text }).resolvedOptions().timeZone !== '';
	} catch {
		return false;
	}
}
