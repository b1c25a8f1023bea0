import type { ColumnType } from 'kysely';
import type { IsoDate } from '#lib/model/calendar.ts';
import type { WeakSpotKind } from '#lib/model/places/weak-spot.ts';

/** The tables of weak spots and routes, as `weak-spots-migration.ts` leaves them. */
export interface PlaceTables {
	weak_spot: WeakSpotTable;
	route: RouteTable;
	route_point: RoutePointTable;
	trip_note: TripNoteTable;
}

/** SQLite has no booleans. */
type Flag = 0 | 1;

/** An instant as ISO text in UTC. */
type InstantText = string;

export interface WeakSpotTable {
	id: string;
	lake_id: string;
	name: string;
	kind: WeakSpotKind;
	/** Both or neither. */
	latitude: number | null;
	longitude: number | null;
	checked_on: IsoDate | null;
	remark: string | null;
	created_at: ColumnType<InstantText, InstantText, never>;
	deleted_at: InstantText | null;
}

export interface RouteTable {
	id: string;
	lake_id: string;
	name: string;
	starts_at_shore: Flag;
	ends_at_shore: Flag;
	created_at: ColumnType<InstantText, InstantText, never>;
	deleted_at: InstantText | null;
}

export interface RoutePointTable {
	route_id: string;
	/** In the order of the route, from 0. */
	place: number;
	/** `null` for a plain point, which has a name and a site instead. */
	spot_id: string | null;
	name: string | null;
	site_id: string | null;
	latitude: number | null;
	longitude: number | null;
	leg_m: number | null;
}

export interface TripNoteTable {
	lake_id: string;
	emergency: string | null;
	party: string | null;
	back: string | null;
	told: string | null;
}
