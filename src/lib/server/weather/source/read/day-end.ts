import type { Stamp } from '../../cells/dates.ts';
import { dayOfStamp, S_PER_DAY } from '../../cells/stamp-time.ts';
import type { DayClocks } from './day-places.ts';

/**
 * When a day is over by the clock that its source counts days by: that of its stamp's own offset, else
 * the one that the mapping names, else the lake's. A stamp at the lake's midnight is a day of the lake.
 */
export function dayEnd_s(day: number, stamp: Stamp, { own, lake }: DayClocks): number {
	const wall_s = (day + 1) * S_PER_DAY;
	const isLakes = dayOfStamp(stamp, lake) !== stamp.day;
	if (stamp.offset_s !== null && !isLakes) return wall_s - stamp.offset_s;
	const clock = stamp.offset_s === null ? (own ?? lake) : lake;
	return Math.max(
		...clock.instants(wall_s),
		...clock.instants(wall_s + 3600).map((at) => at - 3600)
	);
}
