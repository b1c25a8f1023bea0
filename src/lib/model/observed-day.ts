import type { DayValues } from './hours-to-days.ts';
import { withWarmHours } from './warm-hours.ts';
import type { WeatherDay } from './weather.ts';

/**
 * One day from what its hours and what a daily record say of it. The temperature comes whole from
 * the hours where they know it, else from the daily record, in which hours that were seen above freezing
 * count: a thaw is judged by them. Every other field comes from the hours first.
 */
export function observedDay(
	hourly: DayValues | null,
	daily: DayValues | null,
	latitude: number
): WeatherDay | null {
	const first = hourly ?? daily;
	if (!first) return null;
	const ofTemperature = hourly && hourly.air_degC !== null ? hourly : meanFromRange(daily ?? first);
	const day: WeatherDay = {
		on: first.on,
		source: 'observed',
		...withConsistentRange(ofTemperature),
		precipitation_kg_m2: hourly?.precipitation_kg_m2 ?? daily?.precipitation_kg_m2 ?? null,
		snowfall_kg_m2: hourly?.snowfall_kg_m2 ?? daily?.snowfall_kg_m2 ?? null,
		landSnow_m: hourly?.landSnow_m ?? daily?.landSnow_m ?? null,
		wind_m_s: hourly?.wind_m_s ?? daily?.wind_m_s ?? null
	};
	const isOfHours = hourly !== null && hourly.air_degC !== null;
	return isOfHours ? day : withWarmHours(day, hourly?.aboveFreezing_h ?? 0, latitude);
}

/** The middle of the day's range where no mean is reported: common practice of weather services. */
function meanFromRange(day: DayValues): DayValues {
	const { air_degC, min_degC, max_degC } = day;
	if (air_degC !== null || min_degC === null || max_degC === null) return day;
	return { ...day, air_degC: (min_degC + max_degC) / 2 };
}

/** A range that does not hold the mean belongs to another record than the mean does. */
function withConsistentRange(day: DayValues) {
	const { air_degC, freezing_degCd, thawing_degCd, aboveFreezing_h } = day;
	const isConsistent =
		air_degC === null ||
		((day.min_degC ?? air_degC) <= air_degC && (day.max_degC ?? air_degC) >= air_degC);
	const min_degC = isConsistent ? day.min_degC : null;
	const max_degC = isConsistent ? day.max_degC : null;
	return { air_degC, min_degC, max_degC, freezing_degCd, thawing_degCd, aboveFreezing_h };
}
