import { sql, type Kysely } from 'kysely';
import type { IsoDate } from '#lib/model/calendar.ts';
import type { DayValues, WeatherHour } from '#lib/model/hours-to-days.ts';
import type { WeatherDay } from '#lib/model/weather.ts';
import type { Database } from './schema.ts';
import { DAY_COLUMNS, HOUR_COLUMNS, toDayValues, toHour } from './weather-columns.ts';

/** The lake's days from `from` to `to`, both included, sorted; all origins joined by order of trust. */
export async function readWeatherDays(
	db: Kysely<Database>,
	lakeId: string,
	from: IsoDate,
	to: IsoDate
): Promise<WeatherDay[]> {
	const rows = await db
		.selectFrom('joined_day')
		.select(['day', ...DAY_COLUMNS])
		.where('lake_id', '=', lakeId)
		.where('day', '>=', from)
		.where('day', '<=', to)
		.orderBy('day')
		.execute();
	return rows.map((row) => ({ source: 'observed', ...toDayValues(row) }));
}

/** Daily records that people imported, from `from` to `to`, both included, sorted. */
export async function readImportedDays(
	db: Kysely<Database>,
	lakeId: string,
	from: IsoDate,
	to: IsoDate
): Promise<DayValues[]> {
	const rows = await db
		.selectFrom('weather_day')
		.select(['day', ...DAY_COLUMNS])
		.where('lake_id', '=', lakeId)
		.where('basis', '=', 'daily')
		.where('day', '>=', from)
		.where('day', '<=', to)
		.orderBy('day')
		.execute();
	return rows.map(toDayValues);
}

/** Hours that people imported, from `from_s` to before `to_s`, sorted. */
export async function readWeatherHours(
	db: Kysely<Database>,
	lakeId: string,
	from_s: number,
	to_s: number
): Promise<WeatherHour[]> {
	const rows = await db
		.selectFrom('weather_hour')
		.select(['at_s', ...HOUR_COLUMNS])
		.where('lake_id', '=', lakeId)
		.where('at_s', '>=', from_s)
		.where('at_s', '<', to_s)
		.orderBy('at_s')
		.execute();
	return rows.map(toHour);
}

/** First and last hour that people imported. */
export async function readHourSpan(
	db: Kysely<Database>,
	lakeId: string
): Promise<[first_s: number, last_s: number] | null> {
	const row = await db
		.selectFrom('weather_hour')
		.select((eb) => [eb.fn.min('at_s').as('first_s'), eb.fn.max('at_s').as('last_s')])
		.where('lake_id', '=', lakeId)
		.executeTakeFirst();
	return row && row.first_s !== null && row.last_s !== null ? [row.first_s, row.last_s] : null;
}

/** Days with a temperature in each year and month, newest first: enough to say which winters have any. */
export async function listWeatherMonths(db: Kysely<Database>, lakeId: string): Promise<IsoDate[]> {
	const rows = await db
		.selectFrom('joined_day')
		.select(sql<string>`substr(day, 1, 7)`.as('month'))
		.distinct()
		.where('lake_id', '=', lakeId)
		.where(hasTemperature)
		.orderBy('month', 'desc')
		.execute();
	return rows.map(({ month }) => `${month}-01`);
}

/** The last day with a temperature. */
export async function readLastObservedDay(
	db: Kysely<Database>,
	lakeId: string
): Promise<IsoDate | null> {
	const row = await db
		.selectFrom('joined_day')
		.select((eb) => eb.fn.max('day').as('day'))
		.where('lake_id', '=', lakeId)
		.where(hasTemperature)
		.executeTakeFirst();
	return row?.day ?? null;
}

const hasTemperature = sql<boolean>`(air_degC IS NOT NULL OR (min_degC IS NOT NULL AND max_degC IS NOT NULL))`;
