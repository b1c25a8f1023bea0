import { daysBetween, type IsoDate } from './calendar.ts';
import type { ForecastDay } from './forecast.ts';

/** How far a weather forecast is trusted to warn of a single day. Our choice. */
const LOOK_AHEAD_d = 7;

/** The days after today that a weather forecast tells, a week of them at most. */
export function daysAhead<Day extends Pick<ForecastDay, 'on' | 'source'>>(
	days: readonly Day[],
	today: IsoDate
): Day[] {
	return days.filter(
		({ on, source }) =>
			source === 'forecast' && on > today && daysBetween(today, on) <= LOOK_AHEAD_d
	);
}
