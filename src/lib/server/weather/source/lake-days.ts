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
