import { daysBetween, type IsoDate } from '#lib/model/calendar.ts';
import type { WeatherDay } from '#lib/model/weather.ts';

/** The weather of the winter that is shown. */
export interface WeatherSummary {
	/** First and last day with a temperature. */
	from: IsoDate | null;
	to: IsoDate | null;
	/** Days with a temperature. */
	days: number;
	/** Days without one between `from` and `to`. */
	gapDays: number;
	/** Days from the lake's last observation, of any winter, to today. */
	age_d: number | null;
	hasPrecipitation: boolean;
}

export function summarizeWeather(
	days: readonly WeatherDay[],
	lastObserved: IsoDate | null,
	today: IsoDate
): WeatherSummary {
	const known = days.filter(({ air_degC }) => air_degC !== null);
	const from = known.at(0)?.on ?? null;
	const to = known.at(-1)?.on ?? null;
	return {
		from,
		to,
		days: known.length,
		gapDays: from && to ? daysBetween(from, to) + 1 - known.length : 0,
		age_d: lastObserved ? Math.max(0, daysBetween(lastObserved, today)) : null,
		hasPrecipitation: days.some(
			(day) => day.precipitation_kg_m2 !== null || day.snowfall_kg_m2 !== null
		)
	};
}
