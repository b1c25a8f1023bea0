import { addDays, type IsoDate } from '#lib/model/calendar.ts';
import type { LakeMinute } from '#lib/model/since/since.ts';
import { age, shortDay } from './format/day.ts';

/**
 * Up to when weather is known, by the lake's clock.
 * @example weatherToWords({ on: '2027-01-20', clock: '14:00' }, '2027-01-20') // => 'to 14:00 today'
 */
export function weatherToWords({ on, clock }: LakeMinute, today: IsoDate): string {
	if (clock === '00:00') return `to the end of ${dayWords(addDays(on, -1), today)}`;
	return on === today ? `to ${clock} today` : `to ${clock} on ${dayWords(on, today)}`;
}

function dayWords(on: IsoDate, today: IsoDate): string {
	return on === today ? 'today' : `${shortDay(on)}, ${age(on, today)}`;
}
