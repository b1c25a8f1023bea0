import { sql, type Kysely } from 'kysely';
import { flag } from './column-checks.ts';
import type { Database } from './schema.ts';

/** Who may come in, and by which door. Of every secret a digest alone is stored. */
export async function access(db: Kysely<Database>): Promise<void> {
	for (const statement of STATEMENTS) await sql.raw(statement).execute(db);
}

const HASH = 'TEXT NOT NULL UNIQUE CHECK (length(secret_hash) = 64)';

const STATEMENTS = [
	`CREATE TABLE passphrase (
		one INTEGER PRIMARY KEY CHECK (one = 1),
		hash TEXT NOT NULL CHECK (length(hash) BETWEEN 40 AND 400),
		set_at TEXT NOT NULL
	) STRICT`,
	`CREATE TABLE person (
		id TEXT PRIMARY KEY,
		name TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 120),
		secret_hash TEXT UNIQUE CHECK (length(secret_hash) = 64),
		${flag('joins_once')},
		made_at TEXT NOT NULL,
		joined_at TEXT
	) STRICT`,
	`CREATE TABLE guest_link (
		id TEXT PRIMARY KEY,
		lake_id TEXT NOT NULL REFERENCES lake (id) ON DELETE CASCADE,
		name TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 120),
		secret_hash ${HASH},
		${flag('sees_places')},
		made_at TEXT NOT NULL,
		opened_at TEXT
	) STRICT`,
	`CREATE TABLE session (
		secret_hash TEXT PRIMARY KEY CHECK (length(secret_hash) = 64),
		role TEXT NOT NULL CHECK (role IN ('owner', 'helper', 'guest')),
		person_id TEXT REFERENCES person (id) ON DELETE CASCADE,
		guest_link_id TEXT REFERENCES guest_link (id) ON DELETE CASCADE,
		made_at TEXT NOT NULL,
		until_at TEXT NOT NULL,
		CHECK ((role = 'helper') = (person_id IS NOT NULL)),
		CHECK ((role = 'guest') = (guest_link_id IS NOT NULL))
	) STRICT, WITHOUT ROWID`,
	`CREATE TABLE api_token (
		id TEXT PRIMARY KEY,
		name TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 120),
		secret_hash ${HASH},
		person_id TEXT REFERENCES person (id) ON DELETE CASCADE,
		made_at TEXT NOT NULL,
		used_on TEXT
	) STRICT`,
	`CREATE TABLE known_device (
		secret_hash TEXT PRIMARY KEY CHECK (length(secret_hash) = 64),
		made_at TEXT NOT NULL
	) STRICT, WITHOUT ROWID`
];
