import type { Selectable } from 'kysely';
import type { DayValues, WeatherHour } from '#lib/model/hours-to-days.ts';
import type { WeatherDayTable, WeatherHourTable } from './schema.ts';

/** Columns of a weather table that carry a value, apart from its key. */
export const DAY_COLUMNS = [
	'air_degC',
	'min_degC',
	'max_degC',
	'freezing_degCd',
	'thawing_degCd',
	'above_freezing_h',
	'precipitation_kg_m2',
	'snowfall_kg_m2',
	'land_snow_m',
	'wind_m_s'
] as const satisfies (keyof WeatherDayTable)[];

export const HOUR_COLUMNS = [
	'air_degC',
	'precipitation_kg_m2',
	'snowfall_kg_m2',
	'land_snow_m',
	'wind_m_s'
] as const satisfies (keyof WeatherHourTable)[];

type DayColumns = Omit<Selectable<WeatherDayTable>, 'lake_id' | 'basis'>;
type HourColumns = Omit<Selectable<WeatherHourTable>, 'lake_id'>;

export function toDayColumns({ on, aboveFreezing_h, landSnow_m, ...same }: DayValues): DayColumns {
	return { day: on, ...same, above_freezing_h: aboveFreezing_h, land_snow_m: landSnow_m };
}

export function toDayValues({
	day,
	above_freezing_h,
	land_snow_m,
	...same
}: DayColumns): DayValues {
	return { on: day, ...same, aboveFreezing_h: above_freezing_h, landSnow_m: land_snow_m };
}

export function toHourColumns({ landSnow_m, ...same }: WeatherHour): HourColumns {
	return { ...same, land_snow_m: landSnow_m };
}

/** An hour's key and its values in the order of `HOUR_COLUMNS`: where thousands are stored at once. */
export function hourCells(hour: WeatherHour): (number | null)[] {
	const { precipitation_kg_m2, snowfall_kg_m2 } = hour;
	const amounts = [precipitation_kg_m2, snowfall_kg_m2, hour.landSnow_m, hour.wind_m_s];
	return [hour.at_s, hour.air_degC, ...amounts];
}

export function toHour({ land_snow_m, ...same }: HourColumns): WeatherHour {
	return { ...same, landSnow_m: land_snow_m };
}
