import { usualRange_K } from '../air-range.ts';
import { meanAir_degC, splitBySine, type DayDegrees } from '../degree-days.ts';
import { snowShare } from '../snow.ts';
import type { WeatherDay } from '../weather.ts';

/** A smaller shift leaves the day as it was reported. */
const NOTICEABLE_K = 0.05;

/**
 * The day, warmer or colder by a shift: mean, minimum and maximum alike.
 *
 * A day built from hours has its frost, thaw and warm hours split anew by the sine of its range.
 * What falls as snow changes as it does between 0 and 2 °C, from the day's own share.
 */
export function shiftDay(day: WeatherDay, shift_K: number, latitude: number): WeatherDay {
	const air_degC = meanAir_degC(day);
	if (air_degC === null || Math.abs(shift_K) < NOTICEABLE_K) return day;
	return {
		...day,
		air_degC: air_degC + shift_K,
		min_degC: day.min_degC === null ? null : day.min_degC + shift_K,
		max_degC: day.max_degC === null ? null : day.max_degC + shift_K,
		...splitAnew(day, air_degC + shift_K, latitude),
		...fallAnew(day, air_degC, shift_K)
	};
}

/** The day with more or less of what falls on it. */
export function scaleFall(day: WeatherDay, factor: number): WeatherDay {
	const { precipitation_kg_m2: all, snowfall_kg_m2: snow } = day;
	return {
		...day,
		precipitation_kg_m2: all === null ? null : all * factor,
		snowfall_kg_m2: snow === null ? null : snow * factor
	};
}

type Sums = Pick<WeatherDay, keyof DayDegrees>;

function splitAnew(day: WeatherDay, air_degC: number, latitude: number): Sums {
	const hasSums = day.freezing_degCd !== null && day.thawing_degCd !== null;
	if (!hasSums && day.aboveFreezing_h === null)
		return { freezing_degCd: null, thawing_degCd: null, aboveFreezing_h: null };
	const { min_degC, max_degC } = day;
	const isRangeKnown = min_degC !== null && max_degC !== null;
	const range_K = isRangeKnown ? max_degC - min_degC : usualRange_K(latitude, month(day));
	return splitBySine(air_degC, range_K);
}

function month(day: WeatherDay): number {
	return Number(day.on.slice(5, 7));
}

type Fall = Pick<WeatherDay, 'precipitation_kg_m2' | 'snowfall_kg_m2'>;

function fallAnew(day: WeatherDay, air_degC: number, shift_K: number): Fall {
	const { precipitation_kg_m2, snowfall_kg_m2 } = day;
	const all = precipitation_kg_m2 ?? snowfall_kg_m2;
	// Without a snowfall of its own the model shares the day's precipitation by temperature itself.
	if (all === null || snowfall_kg_m2 === null) return { precipitation_kg_m2, snowfall_kg_m2 };
	const share = all > 0 ? Math.min(1, snowfall_kg_m2 / all) : 0;
	const change = snowShare(air_degC + shift_K) - snowShare(air_degC);
	const newShare = Math.min(1, Math.max(0, share + change));
	return { precipitation_kg_m2: all, snowfall_kg_m2: all * newShare };
}
