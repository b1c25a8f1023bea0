import { addDays, type IsoDate } from '#lib/model/calendar.ts';
import type { LakeFacts } from '#lib/model/lake.ts';
import type { WeatherDay } from '#lib/model/weather.ts';
import { weatherDay } from './weather-day.ts';

/** An invented lake of middling size. */
export const INVENTED_LAKE: LakeFacts = {
	latitude: 47,
	longitude: -90,
	elevation_m: 300,
	area_km2: 1.2,
	meanDepth_m: 4,
	water: 'lake'
};

/** Numbers in [0, 1) that follow from the seed. */
export function seeded(seed: number): () => number {
	let state = seed >>> 0;
	return () => {
		state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
		return state / 2 ** 32;
	};
}

export interface WinterShape {
	seed: number;
	mean_degC: number;
	swing_K: number;
	/** Mean snowfall of a day. */
	snow_kg_m2: number;
}

/** An invented winter of daily means and snowfall, all below freezing when the swing allows it. */
export function seededWinter(from: IsoDate, days: number, shape: WinterShape): WeatherDay[] {
	const draw = seeded(shape.seed);
	return Array.from({ length: days }, (_, index) => {
		const fall = draw() < 0.3 ? (shape.snow_kg_m2 / 0.3) * 2 * draw() : 0;
		return weatherDay(addDays(from, index), {
			air_degC: shape.mean_degC + shape.swing_K * (2 * draw() - 1),
			precipitation_kg_m2: fall,
			snowfall_kg_m2: fall
		});
	});
}
