import { meanAir_degC } from '../degree-days.ts';
import type { LakeFacts } from '../lake.ts';
import type { WeatherDay } from '../weather.ts';
import { coldness, usualAir_degC } from './usual-climate.ts';

/** How far a place lies off the usual climate: scatter of the stations it was fitted to [C, M-med]. */
export const PLACE_SPREAD_K = 4;
/** How far a winter lies off its place's mean: 2.0 and 2.7 K at 46 and 63 °N, measured [C]. */
export const WINTER_SPREAD_K = 2.3;

/** How far a place's autumn or spring may lie off the usual otherwise than its winter does [M-lo]. */
const SEASON_SPREAD_K = 2.5;

const DAILY_VARIANCE_K2 = 25; // of daily weather about its winter's mean [M-med]
const DAYS_PER_FRESH_DAY = 9; // days that tell as much as one free of the others' weather [C]

/** What is known of the distance between a place's winters and the usual climate. */
export interface PlaceOffset {
	mean_K: number;
	spread_K: number;
}

/**
 * The place's offset from what was observed there in the cold half of the year.
 *
 *   mean = w a,  spread = σp √(1 - w),  w = σp² / (σp² + σw² + σs² + 9·25/n)
 *
 * The customary combination of a normal prior with a mean `a` of n days, whose anomalies keep 0.8
 * from day to day. All days count as of one winter, which leaves the spread wide.
 */
export function placeOffset(lake: LakeFacts, observed: readonly WeatherDay[]): PlaceOffset {
	const anomalies = observed.flatMap((day) => {
		const air_degC = meanAir_degC(day);
		if (air_degC === null || coldness(lake, day.on) <= 0) return [];
		return [air_degC - usualAir_degC(lake, day.on)];
	});
	if (anomalies.length === 0) return { mean_K: 0, spread_K: PLACE_SPREAD_K };
	const mean_K = anomalies.reduce((sum, each) => sum + each, 0) / anomalies.length;
	const noise =
		WINTER_SPREAD_K ** 2 +
		SEASON_SPREAD_K ** 2 +
		(DAYS_PER_FRESH_DAY * DAILY_VARIANCE_K2) / anomalies.length;
	const weight = PLACE_SPREAD_K ** 2 / (PLACE_SPREAD_K ** 2 + noise);
	return { mean_K: weight * mean_K, spread_K: PLACE_SPREAD_K * Math.sqrt(1 - weight) };
}
