/** A day is kept as text; the pattern refuses what would sort wrongly. */
export function day(column: string): string {
	return `${column} TEXT CHECK (${column} GLOB '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]')`;
}

/** Infinity would pass a one-sided check, so every number has two ends. SQLite has no NaN. */
export function real(column: string, low: number, high: number): string {
	return `${column} REAL CHECK (${column} BETWEEN ${low} AND ${high})`;
}

export function flag(column: string): string {
	return `${column} INTEGER NOT NULL CHECK (${column} IN (0, 1))`;
}

/** Columns of an hour's weather, in the order of `HOUR_COLUMNS`. */
export const HOUR_VALUES = [
	real('air_degC', -95, 65),
	real('precipitation_kg_m2', 0, 500),
	real('snowfall_kg_m2', 0, 500),
	real('land_snow_m', 0, 20),
	real('wind_m_s', 0, 120)
].join(',\n');

/** Columns of a day's weather, in the order of `DAY_COLUMNS`. */
export const DAY_VALUES = [
	real('air_degC', -95, 65),
	real('min_degC', -95, 65),
	real('max_degC', -95, 65),
	real('freezing_degCd', 0, 100),
	real('thawing_degCd', 0, 100),
	real('above_freezing_h', 0, 24),
	real('precipitation_kg_m2', 0, 12_500),
	real('snowfall_kg_m2', 0, 12_500),
	real('land_snow_m', 0, 20),
	real('wind_m_s', 0, 120)
].join(',\n');
