import type { IsoDate } from '#lib/model/calendar.ts';
import { daysBetween } from '#lib/model/calendar.ts';
import { meanAir_degC } from '#lib/model/degree-days.ts';
import type { WeatherDay } from '#lib/model/weather.ts';

export interface PlainDegreeDays {
	fdd_degCd: number;
	tdd_degCd: number;
	/** Days with a temperature over days of the calendar, 0 to 1; 0 when no day has passed. */
	knownFraction: number;
}

/**
 * Gross degree-days by daily means from `from` (counted) to `to` (not counted); days without a
 * temperature add nothing. What the published α are meant for, and what the baselines use; the
 * model itself splits each day by its range.
 */
export function plainDegreeDays(
	weather: readonly WeatherDay[],
	from: IsoDate,
	to: IsoDate
): PlainDegreeDays {
	const air_degC = weather
		.filter((day) => day.on >= from && day.on < to)
		.map(meanAir_degC)
		.filter((mean) => mean !== null);
	const calendarDays = daysBetween(from, to);
	return {
		fdd_degCd: air_degC.reduce((sum, mean) => sum + Math.max(0, -mean), 0),
		tdd_degCd: air_degC.reduce((sum, mean) => sum + Math.max(0, mean), 0),
		knownFraction: calendarDays > 0 ? air_degC.length / calendarDays : 0
	};
}
