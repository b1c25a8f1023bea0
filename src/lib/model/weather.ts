import type { IsoDate } from './calendar.ts';

/**
 * Where a day's weather comes from. A `gap` is a day that nobody reported: it widens the doubt,
 * it may melt ice as its neighbours would, and it never makes any.
 */
export type DaySource = 'observed' | 'forecast' | 'climate' | 'gap';

/** The weather of one day in the lake's own calendar. `null` is unknown, never zero. */
export interface WeatherDay {
	on: IsoDate;
	source: DaySource;
	/** Mean of the day. */
	air_degC: number | null;
	min_degC: number | null;
	max_degC: number | null;
	/**
	 * The next three are known where the day was built from hours, and are then used as they are;
	 * otherwise the sine of `degree-days.ts` supplies them.
	 */
	freezing_degCd: number | null;
	thawing_degCd: number | null;
	/** Hours of the day above 0 °C, 0 to 24; at least so many where the day has no temperature. */
	aboveFreezing_h: number | null;
	/** Rain and snow together, as water (1 kg/m² = 1 mm). */
	precipitation_kg_m2: number | null;
	/** What fell as snow, as water. */
	snowfall_kg_m2: number | null;
	/** Depth of the snow on land, not on the lake. */
	landSnow_m: number | null;
	wind_m_s: number | null;
}

/** Of a day whose temperature nobody knows. */
export const UNKNOWN_AIR = {
	air_degC: null,
	min_degC: null,
	max_degC: null,
	freezing_degCd: null,
	thawing_degCd: null,
	aboveFreezing_h: null
} as const;

/** Of a day of which nothing is known. */
export const UNKNOWN_DAY = {
	...UNKNOWN_AIR,
	precipitation_kg_m2: null,
	snowfall_kg_m2: null,
	landSnow_m: null,
	wind_m_s: null
} as const;
