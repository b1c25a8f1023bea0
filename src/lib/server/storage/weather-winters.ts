import { sql, type Kysely } from 'kysely';
import { winterOf, type IsoDate, type WinterId } from '#lib/model/calendar.ts';
import type { Database } from './schema.ts';

export interface WinterWeatherRow {
	winter: WinterId;
	/** First and last day with a temperature. */
	from: IsoDate;
	to: IsoDate;
	/** Days with a temperature. */
	days: number;
	/** Days with precipitation or snowfall among them. */
	wetDays: number;
}

/** What is stored of each winter, newest first. */
export async function summarizeWinters(
	db: Kysely<Database>,
	lakeId: string
): Promise<WinterWeatherRow[]> {
	const year = sql<number>`CAST(substr(day, 1, 4) AS INTEGER) - (substr(day, 6) < '07-01')`;
	const rows = await db
		.selectFrom('joined_day')
		.select((eb) => [
			eb.fn.min<string>('day').as('first'),
			eb.fn.max<string>('day').as('last'),
			sql<number>`count(*)`.as('days'),
			sql<number>`count(CASE WHEN precipitation_kg_m2 IS NOT NULL OR snowfall_kg_m2 IS NOT NULL THEN 1 END)`.as(
				'wetDays'
			)
		])
		.where('lake_id', '=', lakeId)
		.where(sql<boolean>`(air_degC IS NOT NULL OR (min_degC IS NOT NULL AND max_degC IS NOT NULL))`)
		.groupBy(year)
		.orderBy('first', 'desc')
		.execute();
	return rows.map(({ first, last, days, wetDays }) => ({
		winter: winterOf(first),
		from: first,
		to: last,
		days,
		wetDays
	}));
}
