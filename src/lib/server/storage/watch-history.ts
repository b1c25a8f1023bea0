import { sql, type Kysely } from 'kysely';
import { keepTriggers, RECORDED } from './own-triggers.ts';
import type { Database } from './schema.ts';

/** What of a table is on record. */
interface Watched {
	/** What a row is known by. */
	key: readonly string[];
	/** Columns that are of no account. */
	without?: readonly string[];
	/** That they were changed is on record, and not what they held. */
	hidden?: readonly string[];
	/** The lake that a row belongs to, as SQL; by its column `lake_id` without. */
	lake?: (row: string) => string;
}

const ofReading = (row: string) => `(SELECT lake_id FROM reading WHERE id = ${row}.reading_id)`;
const ofRoute = (row: string) => `(SELECT lake_id FROM route WHERE id = ${row}.route_id)`;
const ofNone = () => 'NULL';

/** Tables that people write to. */
export const WATCHED: Readonly<Record<string, Watched>> = {
	lake: {
		key: ['id'],
		lake: (row) => `${row}.id`,
		without: ['weather_revision', 'today', 'created_at', 'is_invented']
	},
	site: { key: ['id'] },
	winter: { key: ['site_id', 'winter'] },
	site_event: { key: ['site_id', 'winter', 'position'] },
	reading: { key: ['id'], without: ['created_at', 'version'] },
	hole: { key: ['reading_id', 'position'], lake: ofReading },
	own_load: { key: ['id'], without: ['created_at'] },
	hidden_load: { key: ['load_id'] },
	removal: { key: ['winter'] },
	load_lead: { key: ['load_id'] },
	weak_spot: { key: ['id'], without: ['created_at'] },
	route: { key: ['id'], without: ['created_at'] },
	route_point: { key: ['route_id', 'place'], lake: ofRoute },
	source: { key: ['id'], lake: ofNone, without: ['created_at'], hidden: ['config'] },
	source_key: { key: ['source_id'], lake: ofNone, hidden: ['key'] },
	lake_source: {
		key: ['source_id'],
		// The last ones are the service's own words.
		without: [
			'id',
			'has_precipitation',
			'asked_from',
			'next_at',
			'station_name',
			'station_latitude',
			'station_longitude',
			'station_elevation_m'
		]
	},
	csv_trust: { key: ['lake_id'] }
};

/**
 * Tables that are not on record, and why. A table that stands in neither list fails a test, so that
 * whoever makes one decides.
 */
export const NOT_WATCHED: Readonly<Record<string, string>> = {
	history: 'is the record',
	writer: 'is empty but within a transaction',
	reading_version: 'the reading itself is on record',
	sent_reading: 'what a phone calls it is nothing of the lake',
	weather_day: 'a file that was taken in is one change',
	weather_hour: 'a file that was taken in is one change',
	joined_day: 'made of the others',
	rejoin: 'made of the others',
	source_state: 'no person writes it',
	source_hour: 'no person writes it',
	source_day: 'no person writes it',
	fetch_state: 'no person writes it',
	fetch_log: 'no person writes it',
	lake_change: 'no person writes it',
	lease: 'no person writes it',
	refresh_wish: 'a wish to look anew changes nothing of a lake',
	forecast_issue: 'no person writes it',
	forecast_day: 'no person writes it',
	forecast_hour: 'no person writes it',
	telling_message: 'no person writes it',
	telling_date: 'no person writes it',
	webhook_outbox: 'no person writes it',
	telling: 'where to somebody is told is not of the lake',
	telling_feed: 'where to somebody is told is not of the lake',
	webhook: 'where to somebody is told is not of the lake',
	trip_note: 'who goes and who is told is kept nowhere else',
	passphrase: 'who comes in is not of a lake',
	person: 'who comes in is not of a lake',
	guest_link: 'who comes in is not of a lake',
	session: 'who comes in is not of a lake',
	api_token: 'who comes in is not of a lake',
	known_device: 'who comes in is not of a lake'
};

/**
 * Puts on record, by triggers and so within the transaction of the change itself, what a person writes:
 * whoever writes cannot forget to. Who it is stands in the table `writer`. Columns of later migrations
 * are on record as well.
 */
export async function watchHistory(db: Kysely<Database>): Promise<void> {
	await keepTriggers(db, RECORDED, async (tx) => {
		const wanted = new Map<string, string>();
		for (const [table, watched] of Object.entries(WATCHED)) {
			const columns = await columnsOf(tx, table, watched);
			for (const [name, trigger] of triggersOf(table, watched, columns)) wanted.set(name, trigger);
		}
		return wanted;
	});
}

async function columnsOf(
	db: Kysely<Database>,
	table: string,
	{ without = [] }: Watched
): Promise<string[]> {
	const { rows } = await sql<{ name: string }>`
		SELECT name FROM pragma_table_info(${table})`.execute(db);
	return rows.map(({ name }) => name).filter((name) => !without.includes(name));
}

/** Three for each table, by name. */
function triggersOf(
	table: string,
	{ key, lake, hidden = [] }: Watched,
	columns: readonly string[]
): [name: string, trigger: string][] {
	const shown = columns.filter((name) => !hidden.includes(name));
	const trigger = (
		action: string,
		row: 'OLD' | 'NEW',
		when: string,
		states: [string, string]
	): [string, string] => {
		const name = `${RECORDED}${action} in ${table}`;
		const statement = `CREATE TRIGGER "${name}" AFTER ${action} ON "${table}"
			WHEN EXISTS (SELECT 1 FROM writer) AND ${when}
			BEGIN
				INSERT INTO history (unit, lake_id, at, who, what, key, before, after)
				SELECT unit, ${lake?.(row) ?? `${row}.lake_id`}, at, who, '${table}', ${jsonOf(row, key)},
					${states.join(', ')} FROM writer;
			END`;
		return [name, statement];
	};
	const [before, after] = [jsonOf('OLD', shown), jsonOf('NEW', shown)];
	const isOther = `${jsonOf('OLD', columns)} IS NOT ${jsonOf('NEW', columns)}`;
	return [
		trigger('INSERT', 'NEW', '1', ['NULL', after]),
		trigger('UPDATE', 'NEW', isOther, [before, after]),
		trigger('DELETE', 'OLD', '1', [before, 'NULL'])
	];
}

function jsonOf(row: string, columns: readonly string[]): string {
	return `json_object(${columns.map((name) => `'${name}', ${row}."${name}"`).join(', ')})`;
}
