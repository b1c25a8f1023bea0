import { sql, type Kysely } from 'kysely';
import type { Database } from './schema.ts';

/**
 * Weather by the row: whatever writes it notes the days in `rejoin`, or an issue in `forecast_issue`,
 * within its own transaction, and those are watched. Too many to be watched themselves.
 */
const WITH_ANOTHER = [
	'weather_hour',
	'weather_day',
	'source_hour',
	'source_day',
	'forecast_hour',
	'forecast_day',
	'joined_day'
];
/** Written at every call, when somebody is told or comes in, and of no account for a lake's pages. */
const OF_NO_ACCOUNT = [
	'fetch_log',
	'source_state',
	'telling',
	'telling_feed',
	'telling_message',
	'telling_date',
	'webhook',
	'webhook_outbox',
	'passphrase',
	'person',
	'guest_link',
	'session',
	'api_token',
	'known_device',
	'history'
];

/** Stands for every lake: a table that does not name one may matter to all. */
const ALL_LAKES = '*';

/**
 * Notes in this connection's memory when each lake was last written to, by triggers, so that nobody
 * who writes can forget to. Tables of later migrations are watched as well.
 */
export async function watchLakeChanges(db: Kysely<Database>): Promise<void> {
	await sql`CREATE TEMP TABLE lake_change (at INTEGER PRIMARY KEY AUTOINCREMENT, lake_id TEXT)`.execute(
		db
	);
	await sql`CREATE INDEX temp.lake_change_of ON lake_change (lake_id)`.execute(db);
	const { rows } = await sql<{ name: string; columns: string }>`
		SELECT name, (SELECT group_concat(column.name) FROM pragma_table_info(tables.name) AS column)
			AS columns FROM main.sqlite_master AS tables
		WHERE type = 'table' AND name NOT LIKE 'sqlite%' AND name NOT LIKE 'kysely%'`.execute(db);
	const watched = rows.filter(({ name }) => ![...WITH_ANOTHER, ...OF_NO_ACCOUNT].includes(name));
	for (const { name, columns } of watched) {
		for (const [action, row] of ACTIONS) {
			const lake = sql.raw(`coalesce(${lakeOf(name, columns.split(','), row)}, '${ALL_LAKES}')`);
			// Not by an upsert: a trigger takes on how the statement that fires it meets conflicts.
			await sql`CREATE TEMP TRIGGER ${sql.raw(`"${action} in ${name}"`)}
				AFTER ${sql.raw(action)} ON main.${sql.table(name)}
				BEGIN
					DELETE FROM lake_change WHERE lake_id = ${lake};
					INSERT INTO lake_change (lake_id) VALUES (${lake});
				END`.execute(db);
		}
	}
}

const ACTIONS = [
	['INSERT', 'NEW'],
	['UPDATE', 'NEW'],
	['DELETE', 'OLD']
] as const;

/** The lake that a row belongs to, as SQL; `NULL` where it names none. */
function lakeOf(table: string, columns: readonly string[], row: 'NEW' | 'OLD'): string {
	if (table === 'lake') return `${row}.id`;
	if (columns.includes('lake_id')) return `${row}.lake_id`;
	if (columns.includes('lake_source_id'))
		return `(SELECT lake_id FROM main.lake_source WHERE id = ${row}.lake_source_id)`;
	if (columns.includes('reading_id'))
		return `(SELECT lake_id FROM main.reading WHERE id = ${row}.reading_id)`;
	return 'NULL';
}

/**
 * A text that is the same as long as nothing has been written that may matter to a lake, by this
 * connection or by another.
 */
export async function readLakeStamp(db: Kysely<Database>, lakeId: string): Promise<string> {
	const { rows } = await sql<{ own: number | null; all_lakes: number | null; elsewhere: number }>`
		SELECT (SELECT at FROM temp.lake_change WHERE lake_id = ${lakeId}) AS own,
			(SELECT at FROM temp.lake_change WHERE lake_id = ${ALL_LAKES}) AS all_lakes,
			(SELECT data_version FROM pragma_data_version) AS elsewhere`.execute(db);
	const [stamp] = rows;
	return `${stamp?.own} ${stamp?.all_lakes} ${stamp?.elsewhere}`;
}
