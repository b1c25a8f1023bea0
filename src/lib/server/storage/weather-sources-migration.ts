import { sql, type Kysely } from 'kysely';
import { day, DAY_VALUES, flag, HOUR_VALUES, real } from './column-checks.ts';
import type { Database } from './schema.ts';

/**
 * Weather that sources bring. `weather_hour` and `weather_day` stay what people imported; what is
 * shown is read from `joined_day`, made from both by order of trust.
 */
export async function weatherSources(db: Kysely<Database>): Promise<void> {
	for (const statement of [...sources(), ...brought(), ...forecasts(), ...joined()]) {
		await sql.raw(statement).execute(db);
	}
}

/** A forecast may be made for another place than the one that measures. */
export async function forecastElevation(db: Kysely<Database>): Promise<void> {
	const column = real('station_elevation_m', -500, 9000);
	await sql.raw(`ALTER TABLE forecast_issue ADD COLUMN ${column}`).execute(db);
}

function sources(): string[] {
	return [
		`CREATE TABLE source (
			id TEXT PRIMARY KEY CHECK (length(id) BETWEEN 1 AND 80),
			name TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 120),
			config TEXT NOT NULL CHECK (json_valid(config)),
			${flag('is_on')},
			created_at TEXT NOT NULL,
			deleted_at TEXT
		) STRICT`,
		`CREATE TABLE source_key (
			source_id TEXT PRIMARY KEY REFERENCES source (id) ON DELETE CASCADE,
			key TEXT NOT NULL CHECK (length(key) BETWEEN 1 AND 4000)
		) STRICT, WITHOUT ROWID`,
		`CREATE TABLE source_state (
			source_id TEXT PRIMARY KEY REFERENCES source (id) ON DELETE CASCADE,
			${day('calls_on')},
			calls INTEGER NOT NULL DEFAULT 0 CHECK (calls >= 0),
			retry_after_at TEXT,
			back_off_until_at TEXT,
			last_success_at TEXT,
			failures INTEGER NOT NULL DEFAULT 0 CHECK (failures >= 0)
		) STRICT, WITHOUT ROWID`,
		`CREATE TABLE fetch_log (
			id INTEGER PRIMARY KEY AUTOINCREMENT,
			source_id TEXT NOT NULL REFERENCES source (id) ON DELETE CASCADE,
			lake_id TEXT REFERENCES lake (id) ON DELETE CASCADE,
			at TEXT NOT NULL,
			part TEXT NOT NULL CHECK (part IN ('history', 'forecast')),
			outcome TEXT NOT NULL CHECK (outcome IN ('ok', 'unchanged', 'failed', 'notAsked')),
			stored INTEGER NOT NULL CHECK (stored >= 0),
			calls INTEGER NOT NULL CHECK (calls >= 0),
			bytes INTEGER NOT NULL CHECK (bytes >= 0),
			duration_ms INTEGER NOT NULL CHECK (duration_ms >= 0),
			faults TEXT NOT NULL CHECK (json_valid(faults))
		) STRICT`,
		`CREATE INDEX fetch_log_by_lake ON fetch_log (source_id, lake_id, id)`
	];
}

function brought(): string[] {
	return [
		`CREATE TABLE lake_source (
			id INTEGER PRIMARY KEY,
			lake_id TEXT NOT NULL REFERENCES lake (id) ON DELETE CASCADE,
			source_id TEXT NOT NULL REFERENCES source (id) ON DELETE CASCADE,
			position INTEGER CHECK (position >= 0),
			${flag('corrects_elevation')},
			station TEXT CHECK (length(station) <= 120),
			station_name TEXT CHECK (length(station_name) <= 200),
			${real('station_latitude', -90, 90)},
			${real('station_longitude', -180, 180)},
			${real('station_elevation_m', -500, 9000)},
			has_precipitation INTEGER CHECK (has_precipitation IN (0, 1)),
			${day('asked_from')},
			next_at TEXT,
			UNIQUE (lake_id, source_id)
		) STRICT`,
		`CREATE TABLE csv_trust (
			lake_id TEXT PRIMARY KEY REFERENCES lake (id) ON DELETE CASCADE,
			position INTEGER NOT NULL CHECK (position >= 0)
		) STRICT, WITHOUT ROWID`,
		`CREATE TABLE fetch_state (
			lake_source_id INTEGER NOT NULL REFERENCES lake_source (id) ON DELETE CASCADE,
			part TEXT NOT NULL CHECK (part IN ('history', 'forecast')),
			validators TEXT CHECK (json_valid(validators)),
			last_try_at TEXT NOT NULL,
			last_success_at TEXT,
			fresh_until_at TEXT,
			failures INTEGER NOT NULL CHECK (failures >= 0),
			PRIMARY KEY (lake_source_id, part)
		) STRICT, WITHOUT ROWID`,
		`CREATE TABLE source_hour (
			lake_source_id INTEGER NOT NULL REFERENCES lake_source (id) ON DELETE CASCADE,
			at_s INTEGER NOT NULL,
			${HOUR_VALUES},
			PRIMARY KEY (lake_source_id, at_s)
		) STRICT, WITHOUT ROWID`,
		`CREATE TABLE source_day (
			lake_source_id INTEGER NOT NULL REFERENCES lake_source (id) ON DELETE CASCADE,
			${day('day')} NOT NULL,
			${DAY_VALUES},
			PRIMARY KEY (lake_source_id, day)
		) STRICT, WITHOUT ROWID`
	];
}

function forecasts(): string[] {
	return [
		`CREATE TABLE forecast_issue (
			id INTEGER PRIMARY KEY,
			lake_source_id INTEGER NOT NULL REFERENCES lake_source (id) ON DELETE CASCADE,
			issued_at TEXT NOT NULL,
			${real('correction_K', -60, 60)} NOT NULL,
			UNIQUE (lake_source_id, issued_at)
		) STRICT`,
		`CREATE TABLE forecast_day (
			issue_id INTEGER NOT NULL REFERENCES forecast_issue (id) ON DELETE CASCADE,
			${day('day')} NOT NULL,
			${DAY_VALUES},
			PRIMARY KEY (issue_id, day)
		) STRICT, WITHOUT ROWID`,
		`CREATE TABLE forecast_hour (
			lake_source_id INTEGER NOT NULL REFERENCES lake_source (id) ON DELETE CASCADE,
			at_s INTEGER NOT NULL,
			${HOUR_VALUES},
			PRIMARY KEY (lake_source_id, at_s)
		) STRICT, WITHOUT ROWID`
	];
}

function joined(): string[] {
	return [
		`CREATE TABLE joined_day (
			lake_id TEXT NOT NULL REFERENCES lake (id) ON DELETE CASCADE,
			${day('day')} NOT NULL,
			${DAY_VALUES},
			PRIMARY KEY (lake_id, day)
		) STRICT, WITHOUT ROWID`,
		`CREATE TABLE rejoin (
			lake_id TEXT PRIMARY KEY REFERENCES lake (id) ON DELETE CASCADE,
			${day('from_day')} NOT NULL,
			${day('to_day')} NOT NULL,
			serial INTEGER NOT NULL
		) STRICT, WITHOUT ROWID`,
		`INSERT INTO rejoin (lake_id, from_day, to_day, serial)
			SELECT lake_id, min(day), max(day), 1 FROM weather_day GROUP BY lake_id`
	];
}
