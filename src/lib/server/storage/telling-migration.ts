import { sql, type Kysely } from 'kysely';
import { day } from './column-checks.ts';
import type { Database } from './schema.ts';

/** What is told of a lake, by which ways, and what was told already. */
export async function telling(db: Kysely<Database>): Promise<void> {
	for (const statement of [...ways(), ...told()]) await sql.raw(statement).execute(db);
}

function ways(): string[] {
	return [
		`CREATE TABLE telling (
			lake_id TEXT PRIMARY KEY REFERENCES lake (id) ON DELETE CASCADE,
			loads TEXT CHECK (json_valid(loads)),
			reading_after_d INTEGER NOT NULL CHECK (reading_after_d BETWEEN 1 AND 90),
			since_at TEXT,
			state TEXT CHECK (json_valid(state)),
			looked_at TEXT,
			looked_of TEXT,
			${day('looked_on')},
			named TEXT,
			changed_at TEXT NOT NULL
		) STRICT, WITHOUT ROWID`,
		`CREATE TABLE telling_feed (
			lake_id TEXT NOT NULL REFERENCES lake (id) ON DELETE CASCADE,
			kind TEXT NOT NULL CHECK (kind IN ('calendar', 'changes')),
			secret_hash TEXT NOT NULL UNIQUE CHECK (length(secret_hash) = 64),
			made_at TEXT NOT NULL,
			fetched_at TEXT,
			PRIMARY KEY (lake_id, kind)
		) STRICT, WITHOUT ROWID`,
		`CREATE TABLE webhook (
			lake_id TEXT PRIMARY KEY REFERENCES lake (id) ON DELETE CASCADE,
			address TEXT NOT NULL CHECK (length(address) BETWEEN 1 AND 2000),
			key TEXT NOT NULL CHECK (length(key) BETWEEN 32 AND 200),
			kinds TEXT NOT NULL CHECK (json_valid(kinds)),
			made_at TEXT NOT NULL,
			failures INTEGER NOT NULL DEFAULT 0 CHECK (failures >= 0),
			next_at TEXT,
			stopped_at TEXT,
			trouble TEXT,
			delivered_at TEXT
		) STRICT, WITHOUT ROWID`
	];
}

function told(): string[] {
	return [
		`CREATE TABLE telling_message (
			id TEXT PRIMARY KEY,
			lake_id TEXT NOT NULL REFERENCES lake (id) ON DELETE CASCADE,
			reading_id TEXT REFERENCES reading (id) ON DELETE CASCADE,
			kind TEXT NOT NULL,
			load_id TEXT,
			${day('about_day')},
			title TEXT NOT NULL,
			text TEXT NOT NULL,
			made_at TEXT NOT NULL,
			changed_at TEXT NOT NULL,
			UNIQUE (lake_id, reading_id)
		) STRICT`,
		`CREATE INDEX telling_message_by_time ON telling_message (lake_id, made_at)`,
		`CREATE TABLE telling_date (
			lake_id TEXT NOT NULL REFERENCES lake (id) ON DELETE CASCADE,
			key TEXT NOT NULL,
			uid TEXT NOT NULL UNIQUE,
			${day('from_day')} NOT NULL,
			${day('to_day')} NOT NULL CHECK (to_day >= from_day),
			title TEXT NOT NULL,
			text TEXT NOT NULL,
			sequence INTEGER NOT NULL CHECK (sequence >= 0),
			changed_at TEXT NOT NULL,
			is_shown INTEGER NOT NULL CHECK (is_shown IN (0, 1)),
			PRIMARY KEY (lake_id, key)
		) STRICT, WITHOUT ROWID`,
		`CREATE TABLE webhook_outbox (
			serial INTEGER PRIMARY KEY AUTOINCREMENT,
			id TEXT NOT NULL UNIQUE,
			lake_id TEXT NOT NULL REFERENCES webhook (lake_id) ON DELETE CASCADE,
			body TEXT NOT NULL CHECK (json_valid(body)),
			made_at TEXT NOT NULL
		) STRICT`
	];
}
