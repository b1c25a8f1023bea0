import { daysBetween, type IsoDate } from '#lib/model/calendar.ts';

/** An answer of yesterday still stands for today; this many days back it doesn't. */
const PAST_d = 2;

/** Whether an answer is of another time than now, and has to say of which. */
export function isPast({ asOf, today }: { asOf: IsoDate; today: IsoDate }): boolean {
	return daysBetween(asOf, today) >= PAST_d;
}
