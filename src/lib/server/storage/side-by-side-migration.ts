import { sql, type Kysely } from 'kysely';
import type { Database } from './schema.ts';

/** What several processes on one database have to know of each other. */
export async function sideBySide(db: Kysely<Database>): Promise<void> {
	for (const statement of [
		// `AUTOINCREMENT`: a number never comes again, not even that of a row which is gone.
		`CREATE TABLE lake_change (
			at INTEGER PRIMARY KEY AUTOINCREMENT,
			lake_id TEXT NOT NULL
		) STRICT`,
		`CREATE INDEX lake_change_of ON lake_change (lake_id)`,
		`CREATE TABLE lease (
			name TEXT PRIMARY KEY,
			holder TEXT NOT NULL,
			until_s REAL NOT NULL
		) STRICT, WITHOUT ROWID`,
		`CREATE TABLE refresh_wish (
			lake_source_id INTEGER NOT NULL REFERENCES lake_source (id) ON DELETE CASCADE,
			wish TEXT NOT NULL CHECK (wish IN ('new', 'earlierWinters')),
			wished_at TEXT NOT NULL,
			progress TEXT NOT NULL,
			is_over INTEGER NOT NULL CHECK (is_over IN (0, 1)),
			PRIMARY KEY (lake_source_id, wish)
		) STRICT, WITHOUT ROWID`
	]) {
		await sql.raw(statement).execute(db);
	}
}
