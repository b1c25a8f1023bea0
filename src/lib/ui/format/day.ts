import { daysBetween, type IsoDate } from '#lib/model/calendar.ts';
import { counted } from './number.ts';

/** Long enough to be read as one wait; longer ones read better in months. */
const DAYS_AS_DAYS = 90;

/** Not asked of the machine's own calendar each time: that takes longer than all else of a page. */
const MONTHS = 'Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec'.split(' ');

/** @example day('2027-01-12') // => '12 Jan 2027' */
export function day(on: IsoDate): string {
	return `${shortDay(on)} ${on.slice(0, 4)}`;
}

/** @example shortDay('2027-01-12') // => '12 Jan' */
export function shortDay(on: IsoDate): string {
	return `${Number(on.slice(8))} ${monthShort(Number(on.slice(5, 7)))}`;
}

/** @example monthShort(1) // => 'Jan' */
export function monthShort(month: number): string {
	return MONTHS[month - 1] ?? '';
}

/** How long before `today`, in words. @example age('2027-01-09', '2027-01-12') // => '3 days ago' */
export function age(on: IsoDate, today: IsoDate): string {
	const days = daysBetween(on, today);
	if (days === 0) return 'today';
	if (days === 1) return 'yesterday';
	return days < 0 ? `${span(-days)} ahead` : `${span(days)} ago`;
}

/** @example span(200) // => '7 months' */
export function span(days: number): string {
	if (days < DAYS_AS_DAYS) return counted(days, 'day');
	const months = Math.round(days / 30.44);
	return months < 24 ? counted(months, 'month') : counted(Math.round(days / 365.25), 'year');
}
