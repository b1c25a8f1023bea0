import { addDays, type IsoDate } from './calendar.ts';
import { meanAir_degC } from './degree-days.ts';
import type { WeatherDay } from './weather.ts';

/** A fall of more than this within a day opens thermal cracks. [M-med]; named by [Gold1971] [R]. */
export const COLD_SNAP_FALL_K = 20;
/** Less snow than this leaves the ice to the cold. Our reading of "little snow", no source. */
export const THIN_SNOW_m = 0.05;

/**
 * True when the air fell by more than 20 °C in a day, on this day or the day before, over ice with
 * less than 5 cm of snow.
 *
 * From the warmest of one day to the coldest of the next where both are known, else between their
 * means. The stress is given the day of the fall and the next to ease.
 */
export function isColdSnap(
	on: IsoDate,
	snow_m: number,
	weatherOf: (on: IsoDate) => WeatherDay | undefined
): boolean {
	if (snow_m >= THIN_SNOW_m) return false;
	return [0, -1].some((shift) => {
		const fall = fall_K(weatherOf(addDays(on, shift - 1)), weatherOf(addDays(on, shift)));
		return fall !== null && fall > COLD_SNAP_FALL_K;
	});
}

function fall_K(before: WeatherDay | undefined, after: WeatherDay | undefined): number | null {
	if (!before || !after) return null;
	const from = before.max_degC ?? meanAir_degC(before);
	const to = after.min_degC ?? meanAir_degC(after);
	return from === null || to === null ? null : from - to;
}
