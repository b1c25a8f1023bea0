import type { PartDay } from '#lib/model/since/part-day.ts';
import type { Since } from '#lib/model/since/since.ts';

/** A present in which nothing has been seen since the day of asking. */
export function since(now: string, change: Partial<Since> = {}): Since {
	return {
		now,
		days: [],
		readings: [],
		events: [],
		iceOutOn: null,
		warmLast_h: null,
		weatherTo: null,
		isWeatherOld: false,
		...change
	};
}

/** So many hours of a day, half of a cold day by default, this many of them above freezing. */
export function partDay(
	on: string,
	aboveFreezing_h: number,
	change: Partial<PartDay> = {}
): PartDay {
	return {
		on,
		aboveFreezing_h,
		min_degC: -8,
		max_degC: aboveFreezing_h > 0 ? 6 : -4,
		...change
	};
}
