import { sql, type Kysely } from 'kysely';
import { day } from './column-checks.ts';
import type { Database } from './schema.ts';

/** By when everything has to be off a lake's ice in a winter, and how long each load takes to free. */
export async function removalDate(db: Kysely<Database>): Promise<void> {
	const tables = [
		`CREATE TABLE removal (
			lake_id TEXT NOT NULL REFERENCES lake (id) ON DELETE CASCADE,
			winter TEXT NOT NULL CHECK (winter GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]'),
			${day('removal_on')} NOT NULL,
			PRIMARY KEY (lake_id, winter)
		) STRICT, WITHOUT ROWID`,
		`CREATE TABLE load_lead (
			lake_id TEXT NOT NULL REFERENCES lake (id) ON DELETE CASCADE,
			load_id TEXT NOT NULL CHECK (length(load_id) BETWEEN 1 AND 80),
			lead_d INTEGER NOT NULL CHECK (lead_d BETWEEN 0 AND 60),
			PRIMARY KEY (lake_id, load_id)
		) STRICT, WITHOUT ROWID`
	];
	for (const table of tables) await sql.raw(table).execute(db);
}
