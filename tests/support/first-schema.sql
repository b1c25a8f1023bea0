-- A file of the first schema, as its migration made it, with invented rows. Never edited.
CREATE TABLE "kysely_migration" ("name" varchar(255) not null primary key, "timestamp" varchar(255) not null);
CREATE TABLE "kysely_migration_lock" ("id" varchar(255) not null primary key, "is_locked" integer default 0 not null);
CREATE TABLE lake (
			id TEXT PRIMARY KEY CHECK (length(id) BETWEEN 1 AND 80),
			name TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 120),
			latitude REAL CHECK (latitude BETWEEN -90 AND 90) NOT NULL,
			longitude REAL CHECK (longitude BETWEEN -180 AND 180) NOT NULL,
			elevation_m REAL CHECK (elevation_m BETWEEN -500 AND 9000),
			area_km2 REAL CHECK (area_km2 BETWEEN 0 AND 500000),
			mean_depth_m REAL CHECK (mean_depth_m BETWEEN 0 AND 2000),
			water TEXT NOT NULL CHECK (water IN ('lake', 'river', 'reservoir')),
			time_zone TEXT NOT NULL,
			chart_set TEXT NOT NULL CHECK (chart_set IN ('strict', 'common')),
			is_invented INTEGER NOT NULL CHECK (is_invented IN (0, 1)),
			today TEXT CHECK (today GLOB '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]'),
			weather_revision INTEGER NOT NULL DEFAULT 0,
			created_at TEXT NOT NULL,
			deleted_at TEXT
		) STRICT;
CREATE TABLE site (
			lake_id TEXT NOT NULL REFERENCES lake (id) ON DELETE CASCADE,
			id TEXT NOT NULL CHECK (length(id) BETWEEN 1 AND 80),
			name TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 120),
			PRIMARY KEY (lake_id, id)
		) STRICT, WITHOUT ROWID;
CREATE TABLE winter (
			lake_id TEXT NOT NULL,
			site_id TEXT NOT NULL,
			winter TEXT NOT NULL CHECK (winter GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]'),
			freeze_up_on TEXT CHECK (freeze_up_on GLOB '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]'),
			freeze_up_by TEXT CHECK (freeze_up_by GLOB '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]') CHECK (freeze_up_by >= freeze_up_on),
			ice_out_on TEXT CHECK (ice_out_on GLOB '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]') CHECK (ice_out_on > freeze_up_on),
			PRIMARY KEY (lake_id, site_id, winter),
			FOREIGN KEY (lake_id, site_id) REFERENCES site (lake_id, id) ON DELETE CASCADE
		) STRICT, WITHOUT ROWID;
CREATE TABLE site_event (
			lake_id TEXT NOT NULL,
			site_id TEXT NOT NULL,
			winter TEXT NOT NULL,
			position INTEGER NOT NULL,
			day TEXT CHECK (day GLOB '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]') NOT NULL,
			kind TEXT NOT NULL,
			refroze_on TEXT CHECK (refroze_on GLOB '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]') CHECK (refroze_on > day),
			snow_m REAL CHECK (snow_m BETWEEN 0 AND 10),
			density_kg_m3 REAL CHECK (density_kg_m3 BETWEEN 50 AND 900),
			water_m REAL CHECK (water_m BETWEEN 0 AND 5),
			CHECK (CASE kind
				WHEN 'reopened' THEN snow_m IS NULL AND density_kg_m3 IS NULL AND water_m IS NULL
				WHEN 'cleared' THEN snow_m IS NOT NULL
				WHEN 'packed' THEN snow_m IS NULL AND water_m IS NULL
				WHEN 'pumped' THEN water_m IS NOT NULL
				ELSE 0 END),
			PRIMARY KEY (lake_id, site_id, winter, position),
			FOREIGN KEY (lake_id, site_id, winter)
				REFERENCES winter (lake_id, site_id, winter) ON DELETE CASCADE
		) STRICT, WITHOUT ROWID;
CREATE TABLE weather_day (
			lake_id TEXT NOT NULL REFERENCES lake (id) ON DELETE CASCADE,
			basis TEXT NOT NULL CHECK (basis IN ('daily', 'hourly')),
			day TEXT CHECK (day GLOB '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]') NOT NULL,
			air_degC REAL CHECK (air_degC BETWEEN -95 AND 65),
			min_degC REAL CHECK (min_degC BETWEEN -95 AND 65),
			max_degC REAL CHECK (max_degC BETWEEN -95 AND 65),
			freezing_degCd REAL CHECK (freezing_degCd BETWEEN 0 AND 100),
			thawing_degCd REAL CHECK (thawing_degCd BETWEEN 0 AND 100),
			above_freezing_h REAL CHECK (above_freezing_h BETWEEN 0 AND 24),
			precipitation_kg_m2 REAL CHECK (precipitation_kg_m2 BETWEEN 0 AND 12500),
			snowfall_kg_m2 REAL CHECK (snowfall_kg_m2 BETWEEN 0 AND 12500),
			land_snow_m REAL CHECK (land_snow_m BETWEEN 0 AND 20),
			wind_m_s REAL CHECK (wind_m_s BETWEEN 0 AND 120),
			PRIMARY KEY (lake_id, basis, day)
		) STRICT, WITHOUT ROWID;
CREATE TABLE weather_hour (
			lake_id TEXT NOT NULL REFERENCES lake (id) ON DELETE CASCADE,
			at_s INTEGER NOT NULL,
			air_degC REAL CHECK (air_degC BETWEEN -95 AND 65),
			precipitation_kg_m2 REAL CHECK (precipitation_kg_m2 BETWEEN 0 AND 500),
			snowfall_kg_m2 REAL CHECK (snowfall_kg_m2 BETWEEN 0 AND 500),
			land_snow_m REAL CHECK (land_snow_m BETWEEN 0 AND 20),
			wind_m_s REAL CHECK (wind_m_s BETWEEN 0 AND 120),
			PRIMARY KEY (lake_id, at_s)
		) STRICT, WITHOUT ROWID;
CREATE TABLE reading (
			id TEXT PRIMARY KEY,
			lake_id TEXT NOT NULL,
			site_id TEXT NOT NULL,
			day TEXT CHECK (day GLOB '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]') NOT NULL,
			place TEXT CHECK (length(place) <= 200),
			kind TEXT NOT NULL CHECK (kind IN ('measured', 'atLeast', 'wentThrough')),
			core TEXT CHECK (core IN ('sound', 'wet', 'candled')),
			by_whom TEXT CHECK (length(by_whom) <= 200),
			remark TEXT CHECK (length(remark) <= 2000),
			created_at TEXT NOT NULL,
			deleted_at TEXT,
			FOREIGN KEY (lake_id, site_id) REFERENCES site (lake_id, id) ON DELETE CASCADE
		) STRICT;
CREATE INDEX reading_by_day ON reading (lake_id, site_id, day);
CREATE TABLE hole (
			reading_id TEXT NOT NULL REFERENCES reading (id) ON DELETE CASCADE,
			position INTEGER NOT NULL,
			total_m REAL CHECK (total_m BETWEEN 0 AND 6),
			clear_m REAL CHECK (clear_m BETWEEN 0 AND 6),
			white_m REAL CHECK (white_m BETWEEN 0 AND 6),
			snow_m REAL CHECK (snow_m BETWEEN 0 AND 6),
			slush_m REAL CHECK (slush_m BETWEEN 0 AND 6),
			freeboard_m REAL CHECK (freeboard_m BETWEEN -2 AND 2),
			PRIMARY KEY (reading_id, position)
		) STRICT, WITHOUT ROWID;
CREATE TABLE own_load (
			id TEXT PRIMARY KEY,
			lake_id TEXT NOT NULL REFERENCES lake (id) ON DELETE CASCADE,
			name TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 120),
			mass_kg REAL CHECK (mass_kg BETWEEN 1 AND 1000000) NOT NULL,
			use TEXT,
			parked_h REAL CHECK (parked_h BETWEEN 0 AND 8760) NOT NULL,
			wet_cracks INTEGER NOT NULL CHECK (wet_cracks IN (0, 1, 2)),
			crosses_current INTEGER NOT NULL CHECK (crosses_current IN (0, 1)),
			in_group INTEGER NOT NULL CHECK (in_group IN (0, 1)),
			created_at TEXT NOT NULL,
			deleted_at TEXT
		) STRICT;
INSERT INTO kysely_migration (name, timestamp) VALUES ('0001-first-winter', '2026-11-25T21:18:39.460Z');
INSERT INTO kysely_migration_lock (id, is_locked) VALUES ('migration_lock', 0);
INSERT INTO lake (id, name, latitude, longitude, elevation_m, area_km2, mean_depth_m, water, time_zone, chart_set, is_invented, today, weather_revision, created_at, deleted_at) VALUES ('pond', 'Pond of O''Nobody', 50, -40, 12.5, 0.8, NULL, 'lake', 'Etc/GMT+3', 'strict', 0, NULL, 0, '2027-01-01T00:00:00.000Z', NULL);
INSERT INTO site (lake_id, id, name) VALUES ('pond', 'main', 'Main');
INSERT INTO winter (lake_id, site_id, winter, freeze_up_on, freeze_up_by, ice_out_on) VALUES ('pond', 'main', '2026-27', '2026-11-20', '2026-11-24', NULL);
INSERT INTO site_event (lake_id, site_id, winter, position, day, kind, refroze_on, snow_m, density_kg_m3, water_m) VALUES ('pond', 'main', '2026-27', 0, '2027-01-05', 'cleared', NULL, 0.05, NULL, NULL);
INSERT INTO weather_day (lake_id, basis, day, air_degC, min_degC, max_degC, freezing_degCd, thawing_degCd, above_freezing_h, precipitation_kg_m2, snowfall_kg_m2, land_snow_m, wind_m_s) VALUES ('pond', 'daily', '2027-01-01', -4, NULL, NULL, NULL, NULL, NULL, 2, NULL, NULL, NULL);
INSERT INTO weather_day (lake_id, basis, day, air_degC, min_degC, max_degC, freezing_degCd, thawing_degCd, above_freezing_h, precipitation_kg_m2, snowfall_kg_m2, land_snow_m, wind_m_s) VALUES ('pond', 'daily', '2027-01-02', -6, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL);
INSERT INTO weather_hour (lake_id, at_s, air_degC, precipitation_kg_m2, snowfall_kg_m2, land_snow_m, wind_m_s) VALUES ('pond', 1799204400, -9.5, NULL, NULL, NULL, NULL);
INSERT INTO reading (id, lake_id, site_id, day, place, kind, core, by_whom, remark, created_at, deleted_at) VALUES ('r-1', 'pond', 'main', '2027-01-10', 'North bay', 'measured', 'sound', NULL, 'two holes', '2027-01-10T10:00:00.000Z', NULL);
INSERT INTO hole (reading_id, position, total_m, clear_m, white_m, snow_m, slush_m, freeboard_m) VALUES ('r-1', 0, 0.31, NULL, NULL, 0.1, NULL, 0.02);
INSERT INTO hole (reading_id, position, total_m, clear_m, white_m, snow_m, slush_m, freeboard_m) VALUES ('r-1', 1, 0.29, 0.2, 0.09, 0.1, NULL, NULL);
INSERT INTO own_load (id, lake_id, name, mass_kg, use, parked_h, wet_cracks, crosses_current, in_group, created_at, deleted_at) VALUES ('l-1', 'pond', 'Sled', 180, NULL, 0, 0, 0, 0, '2027-01-01T00:00:00.000Z', NULL);
