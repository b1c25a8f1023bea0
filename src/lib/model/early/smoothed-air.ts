import { addDays, type IsoDate } from '../calendar.ts';
import { DAY_s, WATER_J_kgK, WATER_kg_m3 } from '../constants.ts';
import { meanAir_degC } from '../degree-days.ts';
import { usualAir_degC } from '../ensemble/usual-climate.ts';
import type { LakeFacts } from '../lake.ts';
import type { WeatherDay } from '../weather.ts';

/** Heat that open water exchanges with the air, per degree: the middle of 10 to 30 [R] [AshtonLakeIce]. */
const EXCHANGE_W_m2K = 20;
/** Stands for a mean depth that nobody knows. Our choice, no source. */
export const ASSUMED_DEPTH_m = 5;
/** Times of lag after which the start no longer shows. */
const SPIN_UP_LAGS = 4;

/** The air as a lake's water follows it, at the end of a day. */
export interface SmoothedDay {
	on: IsoDate;
	smoothed_degC: number;
}

/**
 * Time by which well-mixed water lags behind the air.
 *
 *   τ = ρ c D / H      D: mean depth
 *
 * @example lag_d({ meanDepth_m: 6 }) // => 14.5
 */
export function lag_d({ meanDepth_m }: Pick<LakeFacts, 'meanDepth_m'>): number {
	const depth_m = meanDepth_m ?? ASSUMED_DEPTH_m;
	return (WATER_kg_m3 * WATER_J_kgK * depth_m) / EXCHANGE_W_m2K / DAY_s;
}

/**
 * Air temperature with exponentially fading memory, from the first day given to the last.
 *
 *   T' = T + (T_air - T) (1 - exp(-1/τ))
 *
 * Dates of freeze-up follow an exponentially adjusted air temperature: [Bilello1964], abstract [R];
 * that the memory goes by the mean depth as above is heat of mixed water in balance with the air,
 * sun and evaporation left out [derived]. It is an index, not the water's temperature, and may fall
 * below zero. Starts from the usual climate of the place; a day without a temperature changes nothing.
 * The weather is sorted.
 */
export function smoothedAir(
	weather: readonly WeatherDay[],
	lake: LakeFacts,
	start_degC: number | null = null
): SmoothedDay[] {
	const kept = Math.exp(-1 / lag_d(lake));
	const first = weather[0]?.on;
	if (first === undefined) return [];
	let smoothed_degC = start_degC ?? usualBefore_degC(lake, first);
	return weather.map((day) => {
		const air_degC = meanAir_degC(day);
		if (air_degC !== null) smoothed_degC = air_degC + (smoothed_degC - air_degC) * kept;
		return { on: day.on, smoothed_degC };
	});
}

/** What the usual climate would have left of memory by a day. */
function usualBefore_degC(lake: LakeFacts, on: IsoDate): number {
	const kept = Math.exp(-1 / lag_d(lake));
	const days = Math.ceil(SPIN_UP_LAGS * lag_d(lake));
	let smoothed_degC = usualAir_degC(lake, addDays(on, -days));
	for (let back = days; back > 0; back--) {
		const air_degC = usualAir_degC(lake, addDays(on, -back));
		smoothed_degC = air_degC + (smoothed_degC - air_degC) * kept;
	}
	return smoothed_degC;
}
