import { sql, type Kysely } from 'kysely';
import { day, flag, real } from './column-checks.ts';
import type { Database } from './schema.ts';

/** Weak spots, the routes over them, and what a lake's trip sheet keeps. */
export async function weakSpots(db: Kysely<Database>): Promise<void> {
	for (const statement of [...places(), ...routes(), trips()]) {
		await sql.raw(statement).execute(db);
	}
}

const POSITION = `${real('latitude', -90, 90)},
	${real('longitude', -180, 180)},
	CHECK ((latitude IS NULL) = (longitude IS NULL))`;

function places(): string[] {
	return [
		`CREATE TABLE weak_spot (
			id TEXT PRIMARY KEY,
			lake_id TEXT NOT NULL REFERENCES lake (id) ON DELETE CASCADE,
			name TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 120),
			kind TEXT NOT NULL CHECK (kind IN ('current', 'inletOutlet', 'narrows', 'spring', 'bogOrWeeds',
				'pressureRidge', 'dockOrBubbler', 'landing', 'rocks', 'crack', 'drift', 'brokeThrough')),
			${day('checked_on')},
			remark TEXT CHECK (length(remark) <= 2000),
			created_at TEXT NOT NULL,
			deleted_at TEXT,
			${POSITION}
		) STRICT`,
		`CREATE INDEX weak_spot_of_lake ON weak_spot (lake_id)`
	];
}

function routes(): string[] {
	return [
		`CREATE TABLE route (
			id TEXT PRIMARY KEY,
			lake_id TEXT NOT NULL REFERENCES lake (id) ON DELETE CASCADE,
			name TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 120),
			${flag('starts_at_shore')},
			${flag('ends_at_shore')},
			created_at TEXT NOT NULL,
			deleted_at TEXT
		) STRICT`,
		`CREATE INDEX route_of_lake ON route (lake_id)`,
		// Either a weak spot, or a plain point with a name and perhaps a position of its own.
		`CREATE TABLE route_point (
			route_id TEXT NOT NULL REFERENCES route (id) ON DELETE CASCADE,
			place INTEGER NOT NULL,
			spot_id TEXT REFERENCES weak_spot (id) DEFERRABLE INITIALLY DEFERRED,
			name TEXT CHECK (length(name) BETWEEN 1 AND 120),
			site_id TEXT,
			${real('leg_m', 0, 100_000)},
			${POSITION},
			CHECK ((spot_id IS NULL) = (name IS NOT NULL) AND (spot_id IS NULL) = (site_id IS NOT NULL)),
			CHECK (spot_id IS NULL OR latitude IS NULL),
			PRIMARY KEY (route_id, place)
		) STRICT, WITHOUT ROWID`
	];
}

/** Only what somebody asked to keep. */
function trips(): string {
	return `CREATE TABLE trip_note (
		lake_id TEXT PRIMARY KEY REFERENCES lake (id) ON DELETE CASCADE,
		emergency TEXT CHECK (length(emergency) BETWEEN 1 AND 120),
		party TEXT CHECK (length(party) BETWEEN 1 AND 300),
		back TEXT CHECK (length(back) BETWEEN 1 AND 200),
		told TEXT CHECK (length(told) BETWEEN 1 AND 300)
	) STRICT, WITHOUT ROWID`;
}
