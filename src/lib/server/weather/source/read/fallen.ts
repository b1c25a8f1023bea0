import type { DayValues, WeatherHour } from '#lib/model/hours-to-days.ts';

/** True where anything is known of what fell: without it snow is unknown, not absent. */
export function hasFallen(times: readonly (WeatherHour | DayValues)[]): boolean {
	return times.some(
		({ precipitation_kg_m2, snowfall_kg_m2 }) =>
			precipitation_kg_m2 !== null || snowfall_kg_m2 !== null
	);
}
