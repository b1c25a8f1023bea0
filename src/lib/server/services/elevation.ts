import type { DayValues, WeatherHour } from '#lib/model/hours-to-days.ts';
import { shiftDay } from '#lib/model/ensemble/shifted-day.ts';
import { elevationShift_K } from '#lib/model/lapse-rate.ts';
import { UNKNOWN_AIR } from '#lib/model/weather.ts';

/** The bounds that stored temperatures have. */
const COLDEST_degC = -95;
const WARMEST_degC = 65;

/** What a source's temperatures are made warmer by at a lake; nothing where an elevation is unknown. */
export function correctionFor(
	isWanted: boolean,
	station_m: number | null,
	lake_m: number | null
): number {
	if (!isWanted || station_m === null || lake_m === null) return 0;
	return elevationShift_K(station_m, lake_m);
}

/** Hours as they would be at the lake's elevation. */
export function warmerHours(hours: readonly WeatherHour[], by_K: number): readonly WeatherHour[] {
	if (by_K === 0) return hours;
	return hours.map((hour) => ({ ...hour, air_degC: warmer(hour.air_degC, by_K) }));
}

/** Nothing is known where the correction leaves what air on earth can have: the elevation is wrong. */
function warmer(air_degC: number | null, by_K: number): number | null {
	if (air_degC === null) return null;
	const shifted_degC = air_degC + by_K;
	return shifted_degC < COLDEST_degC || shifted_degC > WARMEST_degC ? null : shifted_degC;
}

/** A day as it would be at the lake's elevation. */
export function warmerDay(day: DayValues, by_K: number, latitude: number): DayValues {
	if (by_K === 0) return day;
	const known = [day.air_degC, day.min_degC, day.max_degC].filter((value) => value !== null);
	if (known.some((value) => warmer(value, by_K) === null)) return { ...day, ...UNKNOWN_AIR };
	const { source: _, ...shifted } = shiftDay({ ...day, source: 'observed' }, by_K, latitude);
	return shifted;
}
