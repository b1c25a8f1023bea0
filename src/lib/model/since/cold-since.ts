import { isColdSnap } from '../cold-snap.ts';
import type { IsoDate } from '../calendar.ts';
import type { WeatherDay } from '../weather.ts';
import { rangeOf } from './part-day.ts';
import type { Since } from './since.ts';

/**
 * True when the air has fallen by more than a cold snap's since the day of asking, from the warmest of
 * one day to the coldest hour so far of the next, or within the whole days before.
 */
export function coldSince(
	snow_m: number,
	{ days }: Pick<Since, 'days'>,
	weatherOf: (on: IsoDate) => WeatherDay | undefined
): boolean {
	const parts = new Map(days.map((day) => [day.on, rangeOf(day)]));
	return days.some(({ on }) =>
		isColdSnap(on, snow_m, (each) => parts.get(each) ?? weatherOf(each))
	);
}
