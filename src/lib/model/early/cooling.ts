import { addDays, type IsoDate } from '../calendar.ts';
import { dayDegrees, meanAir_degC } from '../degree-days.ts';
import type { LakeFacts } from '../lake.ts';
import type { WeatherDay } from '../weather.ts';
import { ASSUMED_DEPTH_m, smoothedAir } from './smoothed-air.ts';

/** Days whose mean is told beside the smoothed one: a week is how people follow the cold. */
const WEEK_d = 7;

/** How far a lake has cooled before it freezes over. */
export interface Cooling {
	/** The last day with a temperature. */
	to: IsoDate;
	/** Mean of the last seven days that have one. */
	week_degC: number;
	/** The mean of the seven before those; `null` where nothing is known of them. */
	weekBefore_degC: number | null;
	/** Frost since 1 July, gross: it cools the water, and counts for no ice. */
	frost_degCd: number;
	/** Days with a mean below 0 °C since 1 July, and the first of them. */
	frostDays: number;
	firstFrostOn: IsoDate | null;
	/** The air as the water follows it. */
	smoothed_degC: number;
	depth_m: number;
	isDepthAssumed: boolean;
}

/** The cooling so far of a winter's weather, sorted; `null` without any temperature. */
export function coolingOf(weather: readonly WeatherDay[], lake: LakeFacts): Cooling | null {
	const known = weather.filter((day) => meanAir_degC(day) !== null);
	const last = known.at(-1);
	if (last === undefined) return null;
	const cold = known.filter((day) => (meanAir_degC(day) ?? 0) < 0);
	const weekAgo = addDays(last.on, -WEEK_d);
	const twoAgo = addDays(last.on, -2 * WEEK_d);
	return {
		to: last.on,
		week_degC: meanOf(known.filter(({ on }) => on > weekAgo)) ?? 0,
		weekBefore_degC: meanOf(known.filter(({ on }) => on > twoAgo && on <= weekAgo)),
		frost_degCd: known.reduce(
			(sum, day) => sum + (dayDegrees(day, lake.latitude)?.freezing_degCd ?? 0),
			0
		),
		frostDays: cold.length,
		firstFrostOn: cold[0]?.on ?? null,
		smoothed_degC: smoothedAir(known, lake).at(-1)?.smoothed_degC ?? 0,
		depth_m: lake.meanDepth_m ?? ASSUMED_DEPTH_m,
		isDepthAssumed: lake.meanDepth_m === null
	};
}

function meanOf(days: readonly WeatherDay[]): number | null {
	if (days.length === 0) return null;
	return days.reduce((sum, day) => sum + (meanAir_degC(day) ?? 0), 0) / days.length;
}
