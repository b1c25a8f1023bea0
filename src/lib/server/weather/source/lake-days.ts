import { TZDate, tzOffset } from '@date-fns/tz';
import { isoDate, type IsoDate } from '#lib/model/calendar.ts';

/** The first instant of a day of the lake's calendar. */
export function startOfDay_s(on: IsoDate, timeZone: string): number {
	const [year = NaN, month = NaN, day = NaN] = on.split('-').map(Number);
	return new TZDate(year, month - 1, day, timeZone).getTime() / 1000;
}

/** The day of the lake's calendar at an instant. */
export function dayAt(at: Date, timeZone: string): IsoDate {
	return isoDate(Math.floor((at.getTime() / 60_000 + tzOffset(timeZone, at)) / 1440));
}

/** @example hourText(1767225600, 'Etc/UTC') // => '2026-01-01 00:00' */
export function hourText(at_s: number, timeZone: string): string {
	const local_ms = at_s * 1000 + tzOffset(timeZone, new Date(at_s * 1000)) * 60_000;
	return new Date(local_ms).toISOString().slice(0, 16).replace('T', ' ');
}

/** True for an IANA name that this machine knows. */
export function isTimeZone(name: string): boolean {
	return !Number.isNaN(tzOffset(name, new Date(0)));
}
