import { sql, type Kysely } from 'kysely';
import type { Database } from './schema.ts';

/** Who writes, for the length of a transaction: at most one row, and none once it is committed. */
export async function writer(db: Kysely<Database>): Promise<void> {
	await sql`CREATE TABLE writer (
		only_row INTEGER PRIMARY KEY CHECK (only_row = 1),
		unit INTEGER NOT NULL,
		who TEXT NOT NULL,
		at TEXT NOT NULL
	) STRICT`.execute(db);
}
