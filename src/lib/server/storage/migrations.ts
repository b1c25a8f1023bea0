import { sql, type Kysely, type Migration } from 'kysely';
import { access } from './access-migration.ts';
import { day, real } from './column-checks.ts';
import { deletedWinters, history } from './history-migration.ts';
import { ownLoads } from './own-loads-migration.ts';
import { readingVersions } from './reading-versions-migration.ts';
import type { Database } from './schema.ts';
import { removalDate } from './removal-date-migration.ts';
import { sideBySide } from './side-by-side-migration.ts';
import { sites } from './sites-migration.ts';
import { weakSpots } from './weak-spots-migration.ts';
import { telling } from './telling-migration.ts';
import { tellingSites } from './telling-sites-migration.ts';
import { tellingUnits } from './telling-units-migration.ts';
import { forecastElevation, weatherSources } from './weather-sources-migration.ts';
import { writer } from './writer-migration.ts';

/**
 * Every change of the schema in order of its name. Append only: a migration that has run somewhere
 * is never edited.
 */
export const migrations: Record<string, Migration> = {
	'0001-first-winter': { up: firstWinter },
	'0002-second-hand': { up: secondHand },
	'0003-weather-sources': { up: weatherSources },
	'0004-forecast-elevation': { up: forecastElevation },
	'0005-weak-spots': { up: weakSpots },
	'0006-sites': { up: sites },
	'0007-removal-date': { up: removalDate },
	'0008-own-loads': { up: ownLoads },
	'0009-telling': { up: telling },
	'0010-access': { up: access },
	'0011-history': { up: history },
	'0012-deleted-winters': { up: deletedWinters },
	'0014-telling-units': { up: tellingUnits },
	'0015-side-by-side': { up: sideBySide },
	'0013-reading-versions': { up: readingVersions },
	'0017-writer': { up: writer },
	'0019-telling-sites': { up: tellingSites }
};

async function firstWinter(db: Kysely<Database>): Promise<void> {
	for (const statement of [...lakes(), ...weather(), ...readings()]) {
		await sql.raw(statement).execute(db);
	}
}

function lakes(): string[] {
	return [
		`CREATE TABLE lake (
			id TEXT PRIMARY KEY CHECK (length(id) BETWEEN 1 AND 80),
			name TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 120),
			${real('latitude', -90, 90)} NOT NULL,
			${real('longitude', -180, 180)} NOT NULL,
			${real('elevation_m', -500, 9000)},
			${real('area_km2', 0, 500_000)},
			${real('mean_depth_m', 0, 2000)},
			water TEXT NOT NULL CHECK (water IN ('lake', 'river', 'reservoir')),
			time_zone TEXT NOT NULL,
			chart_set TEXT NOT NULL CHECK (chart_set IN ('strict', 'common')),
			is_invented INTEGER NOT NULL CHECK (is_invented IN (0, 1)),
			${day('today')},
			weather_revision INTEGER NOT NULL DEFAULT 0,
			created_at TEXT NOT NULL,
			deleted_at TEXT
		) STRICT`,
		`CREATE TABLE site (
			lake_id TEXT NOT NULL REFERENCES lake (id) ON DELETE CASCADE,
			id TEXT NOT NULL CHECK (length(id) BETWEEN 1 AND 80),
			name TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 120),
			PRIMARY KEY (lake_id, id)
		) STRICT, WITHOUT ROWID`,
		`CREATE TABLE winter (
			lake_id TEXT NOT NULL,
			site_id TEXT NOT NULL,
			winter TEXT NOT NULL CHECK (winter GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]'),
			${day('freeze_up_on')},
			${day('freeze_up_by')} CHECK (freeze_up_by >= freeze_up_on),
			${day('ice_out_on')} CHECK (ice_out_on > freeze_up_on),
			PRIMARY KEY (lake_id, site_id, winter),
			FOREIGN KEY (lake_id, site_id) REFERENCES site (lake_id, id) ON DELETE CASCADE
		) STRICT, WITHOUT ROWID`,
		`CREATE TABLE site_event (
			lake_id TEXT NOT NULL,
			site_id TEXT NOT NULL,
			winter TEXT NOT NULL,
			position INTEGER NOT NULL,
			${day('day')} NOT NULL,
			kind TEXT NOT NULL,
			${day('refroze_on')} CHECK (refroze_on > day),
			${real('snow_m', 0, 10)},
			${real('density_kg_m3', 50, 900)},
			${real('water_m', 0, 5)},
			CHECK (CASE kind
				WHEN 'reopened' THEN snow_m IS NULL AND density_kg_m3 IS NULL AND water_m IS NULL
				WHEN 'cleared' THEN snow_m IS NOT NULL
				WHEN 'packed' THEN snow_m IS NULL AND water_m IS NULL
				WHEN 'pumped' THEN water_m IS NOT NULL
				ELSE 0 END),
			PRIMARY KEY (lake_id, site_id, winter, position),
			FOREIGN KEY (lake_id, site_id, winter)
				REFERENCES winter (lake_id, site_id, winter) ON DELETE CASCADE
		) STRICT, WITHOUT ROWID`
	];
}

function weather(): string[] {
	return [
		`CREATE TABLE weather_day (
			lake_id TEXT NOT NULL REFERENCES lake (id) ON DELETE CASCADE,
			basis TEXT NOT NULL CHECK (basis IN ('daily', 'hourly')),
			${day('day')} NOT NULL,
			${real('air_degC', -95, 65)},
			${real('min_degC', -95, 65)},
			${real('max_degC', -95, 65)},
			${real('freezing_degCd', 0, 100)},
			${real('thawing_degCd', 0, 100)},
			${real('above_freezing_h', 0, 24)},
			${real('precipitation_kg_m2', 0, 12_500)},
			${real('snowfall_kg_m2', 0, 12_500)},
			${real('land_snow_m', 0, 20)},
			${real('wind_m_s', 0, 120)},
			PRIMARY KEY (lake_id, basis, day)
		) STRICT, WITHOUT ROWID`,
		`CREATE TABLE weather_hour (
			lake_id TEXT NOT NULL REFERENCES lake (id) ON DELETE CASCADE,
			at_s INTEGER NOT NULL,
			${real('air_degC', -95, 65)},
			${real('precipitation_kg_m2', 0, 500)},
			${real('snowfall_kg_m2', 0, 500)},
			${real('land_snow_m', 0, 20)},
			${real('wind_m_s', 0, 120)},
			PRIMARY KEY (lake_id, at_s)
		) STRICT, WITHOUT ROWID`
	];
}

function readings(): string[] {
	return [
		`CREATE TABLE reading (
			id TEXT PRIMARY KEY,
			lake_id TEXT NOT NULL,
			site_id TEXT NOT NULL,
			${day('day')} NOT NULL,
			place TEXT CHECK (length(place) <= 200),
			kind TEXT NOT NULL CHECK (kind IN ('measured', 'atLeast', 'wentThrough')),
			core TEXT CHECK (core IN ('sound', 'wet', 'candled')),
			by_whom TEXT CHECK (length(by_whom) <= 200),
			remark TEXT CHECK (length(remark) <= 2000),
			created_at TEXT NOT NULL,
			deleted_at TEXT,
			FOREIGN KEY (lake_id, site_id) REFERENCES site (lake_id, id) ON DELETE CASCADE
		) STRICT`,
		`CREATE INDEX reading_by_day ON reading (lake_id, site_id, day)`,
		`CREATE TABLE hole (
			reading_id TEXT NOT NULL REFERENCES reading (id) ON DELETE CASCADE,
			position INTEGER NOT NULL,
			${real('total_m', 0, 6)},
			${real('clear_m', 0, 6)},
			${real('white_m', 0, 6)},
			${real('snow_m', 0, 6)},
			${real('slush_m', 0, 6)},
			${real('freeboard_m', -2, 2)},
			PRIMARY KEY (reading_id, position)
		) STRICT, WITHOUT ROWID`,
		`CREATE TABLE own_load (
			id TEXT PRIMARY KEY,
			lake_id TEXT NOT NULL REFERENCES lake (id) ON DELETE CASCADE,
			name TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 120),
			${real('mass_kg', 1, 1_000_000)} NOT NULL,
			use TEXT,
			${real('parked_h', 0, 8760)} NOT NULL,
			wet_cracks INTEGER NOT NULL CHECK (wet_cracks IN (0, 1, 2)),
			crosses_current INTEGER NOT NULL CHECK (crosses_current IN (0, 1)),
			in_group INTEGER NOT NULL CHECK (in_group IN (0, 1)),
			created_at TEXT NOT NULL,
			deleted_at TEXT
		) STRICT`
	];
}

/** Who had seen the holes was not asked before: what is stored counts as seen. */
async function secondHand(db: Kysely<Database>): Promise<void> {
	await sql`ALTER TABLE reading ADD COLUMN
		second_hand INTEGER NOT NULL DEFAULT 0 CHECK (second_hand IN (0, 1))`.execute(db);
}
