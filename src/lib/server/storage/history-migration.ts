import { sql, type Kysely } from 'kysely';
import type { Database } from './schema.ts';

/** What was changed, by whom and when. Rows go with their lake and are never changed themselves. */
export async function history(db: Kysely<Database>): Promise<void> {
	for (const statement of STATEMENTS) await sql.raw(statement).execute(db);
}

/** A winter can be deleted, and brought back, as a reading can. */
export async function deletedWinters(db: Kysely<Database>): Promise<void> {
	await sql`ALTER TABLE winter ADD COLUMN deleted_at TEXT`.execute(db);
}

const STATEMENTS = [
	`CREATE TABLE history (
		id INTEGER PRIMARY KEY AUTOINCREMENT,
		unit INTEGER NOT NULL,
		lake_id TEXT REFERENCES lake (id) ON DELETE CASCADE,
		at TEXT NOT NULL,
		who TEXT NOT NULL CHECK (length(who) BETWEEN 1 AND 200),
		what TEXT NOT NULL,
		key TEXT NOT NULL CHECK (json_valid(key)),
		before TEXT CHECK (json_valid(before)),
		after TEXT CHECK (json_valid(after)),
		CHECK (before IS NOT NULL OR after IS NOT NULL)
	) STRICT`,
	`CREATE INDEX history_by_lake ON history (lake_id, unit)`,
	`CREATE TRIGGER history_stays BEFORE UPDATE ON history BEGIN
		SELECT RAISE(ABORT, 'what was put on record is never changed');
	END`
];
