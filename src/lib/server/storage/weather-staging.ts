import { sql, type Kysely, type RawBuilder } from 'kysely';
import type { IsoDate } from '#lib/model/calendar.ts';
import type { DayValues, WeatherHour } from '#lib/model/hours-to-days.ts';
import type { Basis, Database } from './schema.ts';
import {
	DAY_COLUMNS,
	HOUR_COLUMNS,
	toDayColumns,
	toHour,
	toHourColumns
} from './weather-columns.ts';

/**
 * An import is staged in the connection's memory while it is read, and reaches the file in one
 * transaction. A later row replaces an earlier one for the same day or hour where it has a value;
 * an empty cell never erases one. At most 500 rows a call.
 */
export async function stageDays(
	db: Kysely<Database>,
	importId: string,
	basis: Basis,
	days: readonly DayValues[]
): Promise<void> {
	const rows = days.map((day) => ({ import_id: importId, basis, ...toDayColumns(day) }));
	if (rows.length === 0) return;
	await db
		.insertInto('staged_day')
		.values(rows)
		.onConflict((conflict) =>
			conflict
				.columns(['import_id', 'basis', 'day'])
				.doUpdateSet(
					Object.fromEntries(DAY_COLUMNS.map((name) => [name, later('staged_day', name)]))
				)
		)
		.execute();
}

export async function stageHours(
	db: Kysely<Database>,
	importId: string,
	hours: readonly WeatherHour[]
): Promise<void> {
	const rows = hours.map((hour) => ({ import_id: importId, ...toHourColumns(hour) }));
	if (rows.length === 0) return;
	await db
		.insertInto('staged_hour')
		.values(rows)
		.onConflict((conflict) =>
			conflict
				.columns(['import_id', 'at_s'])
				.doUpdateSet(
					Object.fromEntries(HOUR_COLUMNS.map((name) => [name, later('staged_hour', name)]))
				)
		)
		.execute();
}

function later(table: string, column: string): RawBuilder<number | null> {
	return sql`coalesce(${sql.ref(`excluded.${column}`)}, ${sql.ref(`${table}.${column}`)})`;
}

/** Staged hours from `from_s` to before `to_s`, sorted. */
export async function readStagedHours(
	db: Kysely<Database>,
	importId: string,
	from_s: number,
	to_s: number
): Promise<WeatherHour[]> {
	const rows = await db
		.selectFrom('staged_hour')
		.select(['at_s', ...HOUR_COLUMNS])
		.where('import_id', '=', importId)
		.where('at_s', '>=', from_s)
		.where('at_s', '<', to_s)
		.orderBy('at_s')
		.execute();
	return rows.map(toHour);
}

export async function readStagedHourSpan(
	db: Kysely<Database>,
	importId: string
): Promise<[first_s: number, last_s: number] | null> {
	const row = await db
		.selectFrom('staged_hour')
		.select((eb) => [eb.fn.min('at_s').as('first_s'), eb.fn.max('at_s').as('last_s')])
		.where('import_id', '=', importId)
		.executeTakeFirst();
	return row && row.first_s !== null && row.last_s !== null ? [row.first_s, row.last_s] : null;
}

export interface StagedSummary {
	from: IsoDate | null;
	to: IsoDate | null;
	/** Days with a temperature. */
	knownDays: number;
}

export async function summarizeStagedDays(
	db: Kysely<Database>,
	importId: string
): Promise<StagedSummary> {
	const known = sql<number>`count(DISTINCT CASE
		WHEN coalesce(air_degC, min_degC + max_degC) IS NOT NULL THEN day END)`;
	return db
		.selectFrom('staged_day')
		.select((eb) => [eb.fn.min('day').as('from'), eb.fn.max('day').as('to'), known.as('knownDays')])
		.where('import_id', '=', importId)
		.executeTakeFirstOrThrow();
}

/** Rows staged, each day or hour once. Days built from hours are not counted. */
export async function countStaged(db: Kysely<Database>, importId: string): Promise<number> {
	const { rows } = await sql<{ count: number }>`
		SELECT (SELECT count(*) FROM staged_day WHERE import_id = ${importId} AND basis = 'daily')
			+ (SELECT count(*) FROM staged_hour WHERE import_id = ${importId}) AS count`.execute(db);
	return rows[0]?.count ?? 0;
}

/** Staged days and hours that the lake has already. */
export async function countReplaced(
	db: Kysely<Database>,
	lakeId: string,
	importId: string
): Promise<number> {
	const { rows } = await sql<{ count: number }>`
		SELECT (SELECT count(*) FROM staged_day s JOIN weather_day w
				ON w.lake_id = ${lakeId} AND w.basis = s.basis AND w.day = s.day
				WHERE s.import_id = ${importId} AND s.basis = 'daily')
			+ (SELECT count(*) FROM staged_hour s JOIN weather_hour w
				ON w.lake_id = ${lakeId} AND w.at_s = s.at_s
				WHERE s.import_id = ${importId}) AS count`.execute(db);
	return rows[0]?.count ?? 0;
}

export async function dropStaged(db: Kysely<Database>, importId: string): Promise<void> {
	await db.deleteFrom('staged_hour').where('import_id', '=', importId).execute();
	await dropStagedDays(db, importId);
}

export async function dropStagedDays(
	db: Kysely<Database>,
	importId: string,
	basis?: Basis
): Promise<void> {
	let query = db.deleteFrom('staged_day').where('import_id', '=', importId);
	if (basis) query = query.where('basis', '=', basis);
	await query.execute();
}
