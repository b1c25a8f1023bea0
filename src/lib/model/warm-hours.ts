import { dayDegrees, meanAir_degC } from './degree-days.ts';
import type { WeatherDay } from './weather.ts';

/**
 * The day with the hours above freezing that were seen of it, where its forecast, or the daily record that
 * stands in for hours that are not all known, has fewer.
 */
export function withWarmHours(day: WeatherDay, seen_h: number, latitude: number): WeatherDay {
	const told_h = dayDegrees(day, latitude)?.aboveFreezing_h ?? 0;
	// A mean above freezing weighs more than any hours.
	const isMeanWarm = day.aboveFreezing_h === null && (meanAir_degC(day) ?? 0) > 0;
	return seen_h <= told_h || isMeanWarm ? day : { ...day, aboveFreezing_h: seen_h };
}
