import { sql, type Kysely } from 'kysely';
import type { IsoDate } from '#lib/model/calendar.ts';
import { observedDay } from '#lib/model/observed-day.ts';
import type { DayValues, WeatherHour } from '#lib/model/hours-to-days.ts';
import type { WeatherDay } from '#lib/model/weather.ts';
import type { Database } from './schema.ts';
import { DAY_COLUMNS, HOUR_COLUMNS, toDayValues, toHour } from './weather-columns.ts';

/** The lake's days from `from` to `to`, both included, sorted; hours and daily records joined. */
export async function readWeatherDays(
	db: Kysely<Database>,
	lakeId: string,
	from: IsoDate,
	to: IsoDate
): Promise<WeatherDay[]> {
	const rows = await db
		.selectFrom('weather_day')
		.select(['basis', 'day', ...DAY_COLUMNS])
		.where('lake_id', '=', lakeId)
		.where('day', '>=', from)
		.where('day', '<=', to)
		.orderBy('day')
		.execute();
	const days = new Map<IsoDate, { hourly: DayValues | null; daily: DayValues | null }>();
	for (const { basis, ...columns } of rows) {
		const day = days.get(columns.day) ?? { hourly: null, daily: null };
		day[basis] = toDayValues(columns);
		days.set(columns.day, day);
	}
	return [...days.values()]
		.map(({ hourly, daily }) => observedDay(hourly, daily))
		.filter((day) => day !== null);
}

/** Hours from `from_s` to before `to_s`, sorted. */
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

/** First and last hour on record. */
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
		.selectFrom('weather_day')
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
		.selectFrom('weather_day')
		.select((eb) => eb.fn.max('day').as('day'))
		.where('lake_id', '=', lakeId)
		.where(hasTemperature)
		.executeTakeFirst();
	return row?.day ?? null;
}

const hasTemperature = sql<boolean>`(air_degC IS NOT NULL OR (min_degC IS NOT NULL AND max_degC IS NOT NULL))`;
