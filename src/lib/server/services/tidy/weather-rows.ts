import type { DayValues } from '#lib/model/hours-to-days.ts';
import type { WeatherDay } from '#lib/model/weather.ts';
import type { OwnWeatherRow } from './own-rows.ts';
import { fromCentimetres, rounded, writeTable } from './write-table.ts';

const HEADER = [
	'date',
	'tmean_c',
	'tmin_c',
	'tmax_c',
	'precip_mm',
	'snowfall_cm',
	'snow_depth_cm',
	'wind_m_s',
	'freezing_degcd',
	'thawing_degcd',
	'above_freezing_h',
	'source'
];

/** `weather.csv`. The folder's snowfall depth is ten times its water, so that 1 kg/m² is 1 cm. */
export function weatherTable(days: readonly WeatherDay[], source: string): string {
	const rows = days.map((day) => [
		day.on,
		rounded(day.air_degC),
		rounded(day.min_degC),
		rounded(day.max_degC),
		rounded(day.precipitation_kg_m2),
		rounded(day.snowfall_kg_m2),
		rounded(day.landSnow_m, 100),
		rounded(day.wind_m_s),
		rounded(day.freezing_degCd),
		rounded(day.thawing_degCd),
		rounded(day.aboveFreezing_h),
		source
	]);
	return writeTable(HEADER, rows);
}

/** A row of `weather.csv` as a day of the lake. */
export function dayOf(row: OwnWeatherRow): DayValues {
	return {
		on: row.date,
		air_degC: row.tmean_c,
		min_degC: row.tmin_c,
		max_degC: row.tmax_c,
		freezing_degCd: row.freezing_degcd,
		thawing_degCd: row.thawing_degcd,
		aboveFreezing_h: row.above_freezing_h,
		precipitation_kg_m2: row.precip_mm,
		snowfall_kg_m2: row.snowfall_we_mm ?? row.snowfall_cm,
		landSnow_m: fromCentimetres(row.snow_depth_cm),
		wind_m_s: row.wind_m_s
	};
}
