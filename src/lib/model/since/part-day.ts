import type { IsoDate } from '../calendar.ts';
import type { DaySpan, WeatherHour } from '../hours-to-days.ts';
import { UNKNOWN_DAY, type WeatherDay } from '../weather.ts';

/** What is known of a day that is not in yet. */
export interface PartDay {
	on: IsoDate;
	/** Hours observed above freezing so far. */
	aboveFreezing_h: number;
	/** Coldest and warmest hour observed so far. */
	min_degC: number;
	max_degC: number;
}

/** A record every three hours stands for the hours between. */
const LONGEST_STEP_S = 10_800;
const S_PER_HOUR = 3600;

/**
 * Days of which some hours are known; `hours` are sorted. Each value stands for the time to the next
 * one, for one hour at least and three at most. Hours that nobody reported count as nothing.
 */
export function partDays(spans: readonly DaySpan[], hours: readonly WeatherHour[]): PartDay[] {
	const known = hours.filter(({ air_degC }) => air_degC !== null);
	return spans.flatMap(({ on, start_s, end_s }) => {
		const first = known.findIndex(({ at_s }) => at_s >= start_s);
		const ofDay = known.filter(({ at_s }) => at_s >= start_s && at_s < end_s);
		if (ofDay.length === 0) return [];
		const air_degC = ofDay.map((hour) => hour.air_degC ?? 0);
		const warm_h = ofDay.map((hour, index) =>
			(hour.air_degC ?? 0) > 0 ? standsFor_s(known, first + index) / S_PER_HOUR : 0
		);
		return {
			on,
			aboveFreezing_h: Math.min(
				24,
				warm_h.reduce((sum, each) => sum + each, 0)
			),
			min_degC: Math.min(...air_degC),
			max_degC: Math.max(...air_degC)
		};
	});
}

/** The last value stands for as long as the one before it did. */
function standsFor_s(hours: readonly WeatherHour[], index: number): number {
	const at_s = hours[index]?.at_s ?? 0;
	const next_s = hours[index + 1]?.at_s;
	const before_s = hours[index - 1]?.at_s;
	const step_s =
		next_s !== undefined ? next_s - at_s : before_s !== undefined ? at_s - before_s : 0;
	const isRegular = step_s <= LONGEST_STEP_S;
	return isRegular ? Math.max(S_PER_HOUR, step_s) : S_PER_HOUR;
}

/**
 * The end of the hours that are known without a break from `from_s` on, at most three hours apart;
 * `from_s` where there are none.
 */
export function unbrokenTo_s(hours: readonly WeatherHour[], from_s: number): number {
	let to_s = from_s;
	for (const { at_s, air_degC } of hours) {
		if (air_degC === null || at_s < to_s - S_PER_HOUR) continue;
		if (at_s + S_PER_HOUR - to_s > LONGEST_STEP_S) break;
		to_s = Math.max(to_s, at_s + S_PER_HOUR);
	}
	return to_s;
}

/** The day as a weather day, for rules that look at a day's range. */
export function rangeOf({ on, min_degC, max_degC }: PartDay): WeatherDay {
	return { ...UNKNOWN_DAY, on, source: 'observed', min_degC, max_degC };
}
