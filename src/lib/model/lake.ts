/** What is known of a lake. `null` is unknown, never zero. */
export interface LakeFacts {
	/** Degrees north, -90 to 90. */
	latitude: number;
	/** Degrees east, -180 to 180. */
	longitude: number;
	elevation_m: number | null;
	area_km2: number | null;
	meanDepth_m: number | null;
	water: 'lake' | 'river' | 'reservoir';
}
