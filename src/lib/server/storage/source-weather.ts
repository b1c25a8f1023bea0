import { sql, type Kysely, type RawBuilder } from 'kysely';
import type { IsoDate } from '#lib/model/calendar.ts';
import type { DayValues, WeatherHour } from '#lib/model/hours-to-days.ts';
import type { Database } from './schema.ts';
import {
	DAY_COLUMNS,
	HOUR_COLUMNS,
	toDayColumns,
	toDayValues,
	toHour,
	toHourColumns
} from './weather-columns.ts';

/** Rows of one statement: a few milliseconds, so that pages wait for no longer. */
export const ROWS_AT_ONCE = 1000;

type HourTable = 'source_hour' | 'forecast_hour';

/** A value that comes later replaces the one before; an absent one never erases it. At most 1,000. */
export async function storeHours(
	db: Kysely<Database>,
	table: HourTable,
	lakeSourceId: number,
	hours: readonly WeatherHour[]
): Promise<void> {
	const rows = hours
		.map(toHourColumns)
		.map((row) => [row.at_s, ...HOUR_COLUMNS.map((n) => row[n])]);
	await storeRows(db, table, ['at_s', ...HOUR_COLUMNS], lakeSourceId, rows);
}

export async function storeSourceDays(
	db: Kysely<Database>,
	lakeSourceId: number,
	days: readonly DayValues[]
): Promise<void> {
	const rows = days.map(toDayColumns).map((row) => [row.day, ...DAY_COLUMNS.map((n) => row[n])]);
	await storeRows(db, 'source_day', ['day', ...DAY_COLUMNS], lakeSourceId, rows);
}

/** One JSON parameter instead of thousands of bound ones: twice as fast. */
async function storeRows(
	db: Kysely<Database>,
	table: HourTable | 'source_day',
	[key = '', ...values]: readonly string[],
	lakeSourceId: number,
	rows: readonly (readonly (string | number | null)[])[]
): Promise<void> {
	if (rows.length === 0) return;
	const columns = [key, ...values];
	const cells = columns.map((_, index) => `value ->> ${index}`).join(', ');
	const merged = values.map((name) => `${name} = coalesce(excluded.${name}, ${table}.${name})`);
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

export interface BroughtSpan {
	firstHour_s: number | null;
	lastHour_s: number | null;
	firstDay: IsoDate | null;
	lastDay: IsoDate | null;
}

/** The first and last hour and day with a temperature that a use of a source has brought. */
export async function readBroughtSpan(
	db: Kysely<Database>,
	lakeSourceId: number
): Promise<BroughtSpan> {
	const { rows } = await sql<BroughtSpan>`SELECT
		${edge('source_hour', 'at_s', 'asc', lakeSourceId)} AS firstHour_s,
		${edge('source_hour', 'at_s', 'desc', lakeSourceId)} AS lastHour_s,
		${edge('source_day', 'day', 'asc', lakeSourceId)} AS firstDay,
		${edge('source_day', 'day', 'desc', lakeSourceId)} AS lastDay`.execute(db);
	return rows[0] ?? { firstHour_s: null, lastHour_s: null, firstDay: null, lastDay: null };
}

function edge(
	table: 'source_hour' | 'source_day',
	key: string,
	order: 'asc' | 'desc',
	lakeSourceId: number
): RawBuilder<unknown> {
	return sql`(SELECT ${sql.ref(key)} FROM ${sql.table(table)}
		WHERE lake_source_id = ${lakeSourceId}
			AND coalesce(air_degC, ${sql.raw(table === 'source_day' ? 'min_degC + max_degC' : 'NULL')}) IS NOT NULL
		ORDER BY ${sql.ref(key)} ${sql.raw(order)} LIMIT 1)`;
}
