import type { ColumnType, Generated } from 'kysely';
import type { IsoDate, WinterId } from '#lib/model/calendar.ts';
import type { AccessTables } from './access-schema.ts';
import type { HistoryTable, WriterTable } from './history-schema.ts';
import type { PlaceTables } from './places-schema.ts';
import type { ReadingTables } from './readings-schema.ts';
import type { SideBySideTables } from './side-by-side-schema.ts';
import type { SourceTables } from './source-schema.ts';
import type { TellingTables } from './telling-schema.ts';

/** The tables as the migrations leave them. SQL names are snake_case; `day` is `on` elsewhere. */
export interface Database
	extends AccessTables, PlaceTables, ReadingTables, SideBySideTables, SourceTables, TellingTables {
	lake: LakeTable;
	history: HistoryTable;
	writer: WriterTable;
	site: SiteTable;
	winter: WinterTable;
	site_event: SiteEventTable;
	weather_day: WeatherDayTable;
	weather_hour: WeatherHourTable;
	reading: ReadingTable;
	hole: HoleTable;
	own_load: OwnLoadTable;
	hidden_load: { lake_id: string; load_id: string };
	removal: RemovalTable;
	load_lead: LoadLeadTable;
	/** The next two live in the connection's own memory and never reach the file; on a server they do. */
	staged_day: Omit<WeatherDayTable, 'lake_id'> & { import_id: string };
	staged_hour: Omit<WeatherHourTable, 'lake_id'> & { import_id: string };
}

/** SQLite has no booleans. */
export type Flag = 0 | 1;

/** An instant as ISO text in UTC. */
type InstantText = string;

export interface LakeTable {
	id: string;
	name: string;
	latitude: number;
	longitude: number;
	elevation_m: number | null;
	area_km2: number | null;
	mean_depth_m: number | null;
	water: 'lake' | 'river' | 'reservoir';
	time_zone: string;
	chart_set: 'strict' | 'common';
	is_invented: Flag;
	today: IsoDate | null;
	/** Counts up with each change of the lake's weather, so that two imports cannot mix. */
	weather_revision: Generated<number>;
	created_at: ColumnType<InstantText, InstantText, never>;
	deleted_at: InstantText | null;
}

export interface SiteTable {
	lake_id: string;
	id: string;
	name: string;
	kind: Generated<'basin' | 'bay' | 'track'>;
	/** Of a track: the site whose ice it was before its first work. */
	parent_id: string | null;
	deleted_at: InstantText | null;
}

export interface WinterTable {
	lake_id: string;
	site_id: string;
	winter: WinterId;
	freeze_up_on: IsoDate | null;
	freeze_up_by: IsoDate | null;
	ice_out_on: IsoDate | null;
	deleted_at: Generated<InstantText | null>;
}

export interface SiteEventTable {
	lake_id: string;
	site_id: string;
	winter: WinterId;
	position: number;
	day: IsoDate;
	kind: 'reopened' | 'cleared' | 'packed' | 'pumped';
	refroze_on: IsoDate | null;
	snow_m: number | null;
	density_kg_m3: number | null;
	water_m: number | null;
}

/** `daily`: reported for the day; `hourly`: built from the hours of `weather_hour`. */
export type Basis = 'daily' | 'hourly';

export interface WeatherDayTable {
	lake_id: string;
	basis: Basis;
	day: IsoDate;
	air_degC: number | null;
	min_degC: number | null;
	max_degC: number | null;
	freezing_degCd: number | null;
	thawing_degCd: number | null;
	above_freezing_h: number | null;
	precipitation_kg_m2: number | null;
	snowfall_kg_m2: number | null;
	land_snow_m: number | null;
	wind_m_s: number | null;
}

export interface WeatherHourTable {
	lake_id: string;
	/** Start of the hour, epoch seconds. */
	at_s: number;
	air_degC: number | null;
	precipitation_kg_m2: number | null;
	snowfall_kg_m2: number | null;
	land_snow_m: number | null;
	wind_m_s: number | null;
}

export interface ReadingTable {
	id: string;
	lake_id: string;
	site_id: string;
	day: IsoDate;
	place: string | null;
	kind: 'measured' | 'atLeast' | 'wentThrough';
	core: 'sound' | 'wet' | 'candled' | null;
	by_whom: string | null;
	second_hand: Flag;
	remark: string | null;
	latitude: number | null;
	longitude: number | null;
	/** Counts up with each change. */
	version: Generated<number>;
	created_at: ColumnType<InstantText, InstantText, never>;
	deleted_at: InstantText | null;
}

export interface HoleTable {
	reading_id: string;
	position: number;
	total_m: number | null;
	clear_m: number | null;
	white_m: number | null;
	snow_m: number | null;
	slush_m: number | null;
	freeboard_m: number | null;
}

export interface RemovalTable {
	lake_id: string;
	winter: WinterId;
	removal_on: IsoDate;
}

export interface LoadLeadTable {
	lake_id: string;
	load_id: string;
	lead_d: number;
}

export interface OwnLoadTable {
	id: string;
	lake_id: string;
	name: string;
	mass_kg: number;
	use: string | null;
	parked_h: number;
	wet_cracks: 0 | 1 | 2;
	crosses_current: Flag;
	in_group: Flag;
	trailer_kg: number | null;
	trailer_apart_m: number | null;
	how_many: number;
	spacing_m: number | null;
	created_at: ColumnType<InstantText, InstantText, never>;
	deleted_at: InstantText | null;
}
