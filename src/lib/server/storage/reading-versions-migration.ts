import { sql, type Kysely } from 'kysely';
import type { Database } from './schema.ts';

/** Which version of a reading stands, the others, and what came from a phone under an id of its own. */
export async function readingVersions(db: Kysely<Database>): Promise<void> {
	const statements = [
		`ALTER TABLE reading ADD COLUMN version INTEGER NOT NULL DEFAULT 1 CHECK (version >= 1)`,
		`CREATE TABLE reading_version (
			id INTEGER PRIMARY KEY,
			reading_id TEXT NOT NULL REFERENCES reading (id) ON DELETE CASCADE,
			version INTEGER NOT NULL CHECK (version >= 1),
			kind TEXT NOT NULL CHECK (kind IN ('replaced', 'aside', 'declined')),
			content TEXT NOT NULL CHECK (json_valid(content)),
			at TEXT NOT NULL
		) STRICT`,
		`CREATE INDEX reading_version_of ON reading_version (reading_id, kind)`,
		`CREATE TABLE sent_reading (
			client_id TEXT PRIMARY KEY CHECK (length(client_id) = 36),
			lake_id TEXT NOT NULL REFERENCES lake (id) ON DELETE CASCADE,
			reading_id TEXT NOT NULL REFERENCES reading (id) ON DELETE CASCADE,
			content TEXT NOT NULL
		) STRICT, WITHOUT ROWID`
	];
	for (const statement of statements) await sql.raw(statement).execute(db);
}
