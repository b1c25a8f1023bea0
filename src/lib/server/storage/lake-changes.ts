import { sql, type Kysely } from 'kysely';
import { keepTriggers, NOTED } from './own-triggers.ts';
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
	'history',
	'staged_day',
	'staged_hour',
	'lake_change',
	'lease',
	'refresh_wish',
	'writer'
];

/** Stands for every lake: a table that does not name one may matter to all. */
const ALL_LAKES = '*';

/**
 * Notes in the database when each lake was last written to, by triggers, so that nobody who writes can
 * forget to, and every process that shares it knows. Tables of later migrations are watched as well.
 */
export function watchLakeChanges(db: Kysely<Database>): Promise<void> {
	return keepTriggers(db, NOTED, wantedTriggers);
}

/** Three for each table, by name. */
async function wantedTriggers(db: Kysely<Database>): Promise<Map<string, string>> {
	const { rows } = await sql<{ name: string; columns: string }>`
		SELECT tables.name, (SELECT group_concat(found.name)
			FROM pragma_table_info(tables.name) AS found) AS columns
		FROM sqlite_master AS tables
		WHERE type = 'table' AND name NOT LIKE 'sqlite%' AND name NOT LIKE 'kysely%'`.execute(db);
	const watched = rows.filter(({ name }) => ![...WITH_ANOTHER, ...OF_NO_ACCOUNT].includes(name));
	return new Map(
		watched.flatMap(({ name, columns }) =>
			ACTIONS.map(([action, row]): [string, string] => {
				const lake = `coalesce(${lakeOf(name, columns.split(','), row)}, '${ALL_LAKES}')`;
				const trigger = `${NOTED}1: ${action} in ${name}`;
				// Not by an upsert: a trigger takes on how the statement that fires it meets conflicts.
				const statement = `CREATE TRIGGER "${trigger}" AFTER ${action} ON "${name}"
					BEGIN
						DELETE FROM lake_change WHERE lake_id = ${lake};
						INSERT INTO lake_change (lake_id) VALUES (${lake});
					END`;
				return [trigger, statement];
			})
		)
	);
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
		return `(SELECT lake_id FROM lake_source WHERE id = ${row}.lake_source_id)`;
	if (columns.includes('reading_id'))
		return `(SELECT lake_id FROM reading WHERE id = ${row}.reading_id)`;
	return 'NULL';
}

/** A text that is the same as long as nothing has been written that may matter to a lake, by whomever. */
export async function readLakeStamp(db: Kysely<Database>, lakeId: string): Promise<string> {
	const { rows } = await sql<{ own: number | null; all_lakes: number | null }>`
		SELECT (SELECT max(at) FROM lake_change WHERE lake_id = ${lakeId}) AS own,
			(SELECT max(at) FROM lake_change WHERE lake_id = ${ALL_LAKES}) AS all_lakes`.execute(db);
	const [stamp] = rows;
	return `${stamp?.own} ${stamp?.all_lakes}`;
}

/** Lakes that were written to since a number of {@link lastChange}, with the last number of all. */
export async function changesSince(
	db: Kysely<Database>,
	last: number
): Promise<{ lakeIds: string[]; last: number }> {
	const rows = await db.selectFrom('lake_change').selectAll().where('at', '>', last).execute();
	return {
		lakeIds: rows.map(({ lake_id }) => lake_id).filter((id) => id !== ALL_LAKES),
		last: Math.max(last, ...rows.map(({ at }) => at))
	};
}

export async function lastChange(db: Kysely<Database>): Promise<number> {
	const { at } = await db
		.selectFrom('lake_change')
		.select((eb) => eb.fn.max('at').as('at'))
		.executeTakeFirstOrThrow();
	return at ?? 0;
}
