import { sql, type Kysely, type Transaction } from 'kysely';
import type { IsoDate } from '#lib/model/calendar.ts';
import type { DayValues, WeatherHour } from '#lib/model/hours-to-days.ts';
import type { Database } from './schema.ts';
import {
	DAY_COLUMNS,
	HOUR_COLUMNS,
	hourCells,
	toDayColumns,
	toDayValues,
	toHour
} from './weather-columns.ts';

/** Rows of one statement: a few milliseconds, so that pages wait for no longer. */
export const ROWS_AT_ONCE = 1000;

type HourTable = 'source_hour' | 'forecast_hour';

export type HourColumn = (typeof HOUR_COLUMNS)[number];
export type DayColumn = (typeof DAY_COLUMNS)[number];

/**
 * A value that comes later replaces the one before. An absent one erases it in the columns of `erasing`
 * alone: where it was asked for, and has been withdrawn. At most 1,000.
 */
export async function storeHours(
	db: Kysely<Database>,
	table: HourTable,
	lakeSourceId: number,
	hours: readonly WeatherHour[],
	erasing: readonly HourColumn[] = []
): Promise<void> {
	const columns = ['at_s', ...HOUR_COLUMNS];
	await storeRows(db, table, columns, lakeSourceId, hours.map(hourCells), erasing);
}

/** Lets go of the hours that were forecast and have not ended at an instant. */
export async function forgetHoursAfter(
	tx: Transaction<Database>,
	lakeSourceId: number,
	at: Date
): Promise<void> {
	await tx
		.deleteFrom('forecast_hour')
		.where('lake_source_id', '=', lakeSourceId)
		.where('at_s', '>', at.getTime() / 1000 - 3600)
		.execute();
}

export async function storeSourceDays(
	db: Kysely<Database>,
	lakeSourceId: number,
	days: readonly DayValues[],
	erasing: readonly DayColumn[] = []
): Promise<void> {
	const rows = days.map(toDayColumns).map((row) => [row.day, ...DAY_COLUMNS.map((n) => row[n])]);
	await storeRows(db, 'source_day', ['day', ...DAY_COLUMNS], lakeSourceId, rows, erasing);
}

/** One JSON parameter instead of thousands of bound ones: twice as fast. */
async function storeRows(
	db: Kysely<Database>,
	table: HourTable | 'source_day',
	[key = '', ...values]: readonly string[],
	lakeSourceId: number,
	rows: readonly (readonly (string | number | null)[])[],
	erasing: readonly string[]
): Promise<void> {
	if (rows.length === 0) return;
	const columns = [key, ...values];
	const cells = columns.map((_, index) => `value ->> ${index}`).join(', ');
	const merged = values.map((name) =>
		erasing.includes(name)
			? `${name} = excluded.${name}`
			: `${name} = coalesce(excluded.${name}, ${table}.${name})`
	);
	await sql`INSERT INTO ${sql.table(table)} (lake_source_id, ${sql.raw(columns.join(', '))})
		SELECT ${lakeSourceId}, ${sql.raw(cells)} FROM json_each(${JSON.stringify(rows)}) WHERE true
		ON CONFLICT (lake_source_id, ${sql.raw(key)}) DO UPDATE SET ${sql.raw(merged.join(', '))}`.execute(
		db
	);
}

/** Hours of several uses from `from_s` to before `to_s`, sorted, by use. */
export async function readSourceHours(
	db: Kysely<Database>,
	table: HourTable,
	lakeSourceIds: readonly number[],
	from_s: number,
	to_s: number
): Promise<Map<number, WeatherHour[]>> {
	if (lakeSourceIds.length === 0) return new Map();
	const rows = await db
		.selectFrom(table)
		.select(['lake_source_id', 'at_s', ...HOUR_COLUMNS])
		.where('lake_source_id', 'in', lakeSourceIds)
		.where('at_s', '>=', from_s)
		.where('at_s', '<', to_s)
		.orderBy('lake_source_id')
		.orderBy('at_s')
		.execute();
	return groupedBy(rows, ({ lake_source_id, ...row }) => [lake_source_id, toHour(row)]);
}

/** Days of several uses, both ends included, sorted, by use. */
export async function readSourceDays(
	db: Kysely<Database>,
	lakeSourceIds: readonly number[],
	from: IsoDate,
	to: IsoDate
): Promise<Map<number, DayValues[]>> {
	if (lakeSourceIds.length === 0) return new Map();
	const rows = await db
		.selectFrom('source_day')
		.select(['lake_source_id', 'day', ...DAY_COLUMNS])
		.where('lake_source_id', 'in', lakeSourceIds)
		.where('day', '>=', from)
		.where('day', '<=', to)
		.orderBy('lake_source_id')
		.orderBy('day')
		.execute();
	return groupedBy(rows, ({ lake_source_id, ...row }) => [lake_source_id, toDayValues(row)]);
}

function groupedBy<Row, Value>(
	rows: readonly Row[],
	entry: (row: Row) => [number, Value]
): Map<number, Value[]> {
	const groups = new Map<number, Value[]>();
	for (const row of rows) {
		const [key, value] = entry(row);
		const group = groups.get(key);
		if (group) group.push(value);
		else groups.set(key, [value]);
	}
	return groups;
}

/** On how many days, by UTC, a use has brought a temperature; both ends included. */
export async function countSourceDays(
	db: Kysely<Database>,
	lakeSourceId: number,
	from: IsoDate,
	to: IsoDate
): Promise<number> {
	const { rows } = await sql<{ days: number }>`SELECT count(*) AS days FROM (
		SELECT date(at_s, 'unixepoch') AS day FROM source_hour
			WHERE lake_source_id = ${lakeSourceId} AND air_degC IS NOT NULL
				AND at_s >= unixepoch(${from}) AND at_s < unixepoch(${to}, '+1 day')
		UNION SELECT day FROM source_day
			WHERE lake_source_id = ${lakeSourceId} AND day >= ${from} AND day <= ${to}
				AND (air_degC IS NOT NULL OR (min_degC IS NOT NULL AND max_degC IS NOT NULL)))`.execute(db);
	return rows[0]?.days ?? 0;
}

/** The end of the last hour with a temperature that each use of a source has brought. */
export async function readLastHours(
	db: Kysely<Database>,
	lakeSourceIds: readonly number[]
): Promise<Map<number, number>> {
	const ends = new Map<number, number>();
	for (const id of lakeSourceIds) {
		const row = await db
			.selectFrom('source_hour')
			.select('at_s')
			.where('lake_source_id', '=', id)
			.where('air_degC', 'is not', null)
			.orderBy('at_s', 'desc')
			.limit(1)
			.executeTakeFirst();
		if (row) ends.set(id, row.at_s + 3600);
	}
	return ends;
}

/** The last day with a temperature that each use of a source has brought as a daily record. */
export async function readLastSourceDays(
	db: Kysely<Database>,
	lakeSourceIds: readonly number[]
): Promise<Map<number, IsoDate>> {
	const days = new Map<number, IsoDate>();
	for (const id of lakeSourceIds) {
		const row = await db
			.selectFrom('source_day')
			.select('day')
			.where('lake_source_id', '=', id)
			.where(
				sql<boolean>`(air_degC IS NOT NULL OR (min_degC IS NOT NULL AND max_degC IS NOT NULL))`
			)
			.orderBy('day', 'desc')
			.limit(1)
			.executeTakeFirst();
		if (row) days.set(id, row.day);
	}
	return days;
}
