import { daysBetween, type IsoDate } from '#lib/model/calendar.ts';
import { span } from '../format/day.ts';

/** @example inDays('2027-03-01', '2027-03-08') // => 'in 7 days' */
export function inDays(now: IsoDate, on: IsoDate): string {
	const days = daysBetween(now, on);
	if (days === 0) return 'today';
	return days < 0 ? `${span(-days)} ago` : `in ${span(days)}`;
}
