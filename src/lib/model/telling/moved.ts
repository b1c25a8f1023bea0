import { daysBetween, type IsoDate } from '../calendar.ts';

/** A day that moves by less is not told anew. Our choice. */
const LEAST_d = 3;
/** A day further off moves by more: a fifth of the days until then. Our choice. */
const OF_THE_WAY = 1 / 5;

/**
 * Whether a day has moved so far since it was last told that it is told anew: by three days, or by a
 * fifth of the days that lie between, where that is more.
 *
 * It is held against the day that was told and not against yesterday's, so that a slow drift is told
 * once it has come so far, and a day that swings about the told one is not.
 */
export function hasMoved(told: IsoDate, now: IsoDate, today: IsoDate): boolean {
	const ahead_d = Math.max(0, daysBetween(today, told), daysBetween(today, now));
	const least_d = Math.max(LEAST_d, Math.ceil(ahead_d * OF_THE_WAY));
	return Math.abs(daysBetween(told, now)) >= least_d;
}
