import { addDays, dayNumber, type IsoDate } from '../calendar.ts';

const WEEK_d = 7;
/** 1 January 1970 was a Thursday. */
const FIRST_SATURDAY = 2;

/**
 * Saturday and Sunday of the coming weekend, of the lake's own calendar: on a Saturday this one's, on a
 * Sunday the next one's.
 *
 * @example comingWeekend('2026-11-25') // => ['2026-11-28', '2026-11-29']
 */
export function comingWeekend(today: IsoDate): [saturday: IsoDate, sunday: IsoDate] {
	const past_d = (((dayNumber(today) - FIRST_SATURDAY) % WEEK_d) + WEEK_d) % WEEK_d;
	const saturday = addDays(today, past_d === 0 ? 0 : WEEK_d - past_d);
	return [saturday, addDays(saturday, 1)];
}
