import type { Units } from '../units-setting.ts';

const MILES_PER_HOUR = 3600 / 1609.344;

/** Wind, to the nearest. @example wind(9.6, metric) // => '10 m/s' */
export function wind(metresPerSecond: number, units: Units): string {
	return units.measure === 'metric'
		? `${Math.round(metresPerSecond)} m/s`
		: `${Math.round(metresPerSecond * MILES_PER_HOUR)} mph`;
}
