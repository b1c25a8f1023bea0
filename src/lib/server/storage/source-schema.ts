import type { ColumnType, Generated } from 'kysely';
import type { IsoDate } from '#lib/model/calendar.ts';
import type { WeatherDayTable, WeatherHourTable } from './schema.ts';

/** The tables of weather sources, as `weather-sources-migration.ts` leaves them. */
export interface SourceTables {
	source: SourceTable;
	source_key: { source_id: string; key: string };
	source_state: SourceStateTable;
	lake_source: LakeSourceTable;
	csv_trust: { lake_id: string; position: number };
	fetch_state: FetchStateTable;
	fetch_log: FetchLogTable;
	source_hour: BySource<Omit<WeatherHourTable, 'lake_id'>>;
	source_day: BySource<DayTable>;
	forecast_issue: ForecastIssueTable;
	forecast_day: DayTable & { issue_id: number };
	forecast_hour: BySource<Omit<WeatherHourTable, 'lake_id'>>;
	joined_day: DayTable & { lake_id: string };
	rejoin: RejoinTable;
}

type BySource<Table> = Table & { lake_source_id: number };
type DayTable = Omit<WeatherDayTable, 'lake_id' | 'basis'>;

/** SQLite has no booleans. */
type Flag = 0 | 1;

/** An instant as ISO text in UTC. */
type InstantText = string;

/** `history`: what was measured; `forecast`: what is to come. */
export type Part = 'history' | 'forecast';

export interface SourceTable {
	id: string;
	name: string;
	/** JSON that the reader checks; never holds a key. */
	config: string;
	is_on: Flag;
	created_at: ColumnType<InstantText, InstantText, never>;
	deleted_at: InstantText | null;
}

export interface SourceStateTable {
	source_id: string;
	/** The UTC day that `calls` were made on. */
	calls_on: IsoDate | null;
	calls: Generated<number>;
	/** The source asked to be left alone until then. */
	retry_after_at: InstantText | null;
	/** After failures we leave it alone of ourselves. */
	back_off_until_at: InstantText | null;
	last_success_at: InstantText | null;
	/** Failures in a row. */
	failures: Generated<number>;
}

export interface LakeSourceTable {
	id: Generated<number>;
	lake_id: string;
	source_id: string;
	/** Place in the order of trust, 0 first; `null`: not used, what it brought is kept. */
	position: number | null;
	corrects_elevation: Flag;
	/** What stands for `{station}` in the address. */
	station: string | null;
	station_name: string | null;
	station_latitude: number | null;
	station_longitude: number | null;
	station_elevation_m: number | null;
	/** Whether its last answer told precipitation. */
	has_precipitation: Flag | null;
	/** The first day that history has been asked for. */
	asked_from: IsoDate | null;
	/** When it is due. */
	next_at: InstantText | null;
}

export interface FetchStateTable {
	lake_source_id: number;
	part: Part;
	/** JSON of what makes the next call conditional. */
	validators: string | null;
	last_try_at: InstantText;
	last_success_at: InstantText | null;
	fresh_until_at: InstantText | null;
	/** Failures in a row. */
	failures: number;
}

/** `notAsked`: a limit or a wait stood in the way. */
export type LoggedOutcome = 'ok' | 'unchanged' | 'failed' | 'notAsked';

export interface FetchLogTable {
	id: Generated<number>;
	source_id: string;
	lake_id: string | null;
	at: InstantText;
	part: Part;
	outcome: LoggedOutcome;
	/** Hours and days stored. */
	stored: number;
	calls: number;
	bytes: number;
	duration_ms: number;
	/** JSON array of `{ code, text }`. */
	faults: string;
}

export interface ForecastIssueTable {
	id: Generated<number>;
	lake_source_id: number;
	issued_at: InstantText;
	/** What the days were made warmer by, for the elevation. */
	correction_K: number;
	/** Of the place that it is for, where that is told. */
	station_elevation_m: number | null;
}

export interface RejoinTable {
	lake_id: string;
	from_day: IsoDate;
	to_day: IsoDate;
	/** Counts up with each change. */
	serial: number;
}
