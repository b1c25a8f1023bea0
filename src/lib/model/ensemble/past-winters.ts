import {
	dayNumber,
	isIsoDate,
	isoDate,
	winterOf,
	type IsoDate,
	type WinterId
} from '../calendar.ts';
import { meanAir_degC } from '../degree-days.ts';
import { UNKNOWN_DAY, type WeatherDay } from '../weather.ts';

/** Share of days with a temperature that a past winter needs. */
const COMPLETE_SHARE = 0.9;
/** A record that ends early is of use for as many days as this at least. Our choice. */
const LEAST_d = 30;
/** Days to either side whose mean stands in for a missing one. */
const NEARBY_d = 7;

/**
 * A stretch of a past winter, day by day, to where its record ends. A day that nobody reported has
 * `air_degC` filled in.
 */
export interface PastWinter {
	winter: WinterId;
	days: WeatherDay[];
}

/**
 * The days that followed this date in earlier winters, `count` of them in a row, from every winter
 * with temperatures on at least nine days in ten; up to its last one from a winter whose record ends
 * early, as those do that are kept for the ice. A missing one has the mean of those within a week
 * of it in all the winters, or of all days where there are none.
 *
 * Counted in days from the same date, so that a stretch keeps its order over 29 February.
 */
export function pastWinters(
	past: readonly WeatherDay[],
	from: IsoDate,
	count: number
): PastWinter[] {
	const observed = past.filter((day) => day.source === 'observed' && meanAir_degC(day) !== null);
	const byDay = new Map(observed.map((day) => [day.on, day]));
	const thisWinter = winterOf(from);
	const earlier = [...new Set(observed.map(({ on }) => winterOf(on)))].filter(
		(winter) => winter < thisWinter
	);
	const stretches = earlier.toSorted().flatMap((winter) => {
		const start = dayNumber(sameDate(from, startYear(winter) - startYear(thisWinter)));
		const days = Array.from({ length: count }, (_, index) => byDay.get(isoDate(start + index)));
		const usable = usableDays(days);
		return usable === null ? [] : [{ winter, start, days: usable }];
	});
	const air = stretches.map(({ days }) => days.map((day) => (day ? meanAir_degC(day) : null)));
	return stretches.map(({ winter, start, days }) => ({
		winter,
		days: days.map((day, index) =>
			day
				? { ...day, air_degC: meanAir_degC(day) }
				: unreported(isoDate(start + index), usualNear(air, index))
		)
	}));
}

/** The stretch to where its record ends, or all of it; `null` where too little is known. */
function usableDays(days: readonly (WeatherDay | undefined)[]) {
	const known = days.filter((day) => day !== undefined).length;
	if (known > 0 && known >= COMPLETE_SHARE * days.length) return days;
	const length = days.findLastIndex((day) => day !== undefined) + 1;
	const isEnough = length >= LEAST_d && known >= COMPLETE_SHARE * length;
	return isEnough ? days.slice(0, length) : null;
}

function startYear(winter: WinterId): number {
	return Number(winter.slice(0, 4));
}

/** The same date of another year; 28 February for the 29th where there is none. */
function sameDate(on: IsoDate, years: number): IsoDate {
	const there = `${Number(on.slice(0, 4)) + years}${on.slice(4)}`;
	return isIsoDate(there) ? there : there.replace('-02-29', '-02-28');
}

function usualNear(air: readonly (number | null)[][], index: number): number {
	const from = Math.max(0, index - NEARBY_d);
	const near = air.flatMap((days) => days.slice(from, index + NEARBY_d + 1));
	return mean(near) ?? mean(air.flat()) ?? 0;
}

function mean(values: readonly (number | null)[]): number | null {
	const known = values.filter((value) => value !== null);
	if (known.length === 0) return null;
	return known.reduce((sum, value) => sum + value, 0) / known.length;
}

function unreported(on: IsoDate, air_degC: number): WeatherDay {
	return { ...UNKNOWN_DAY, on, source: 'climate', air_degC };
}
