import type { Stamp } from './dates.ts';
import type { LakeClock } from './zone.ts';

export const S_PER_DAY = 86_400;

/** Seconds since 1970 as the record's own clock and calendar count them. */
export function wallSeconds({ day, second }: Stamp): number {
	return day * S_PER_DAY + (second ?? 0);
}

/** The day as written, unless the stamp is the instant of midnight at the lake. */
export function dayOfStamp(stamp: Stamp, clock: LakeClock): number {
	if (stamp.offset_s === null) return stamp.day;
	const at_s = wallSeconds(stamp) - stamp.offset_s;
	const local_s = at_s + clock.offset_s(at_s);
	return local_s % S_PER_DAY === 0 ? local_s / S_PER_DAY : stamp.day;
}
