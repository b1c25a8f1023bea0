import { expect, test } from 'vitest';
import type { WeatherHour } from '../../src/lib/model/hours-to-days.ts';
import { stuckRuns, withoutStuckAir } from '../../src/lib/model/stuck-air.ts';

const START_S = Date.UTC(2027, 0, 10) / 1000;

/** One hour after the other; `null` is an hour without a temperature. */
function hours(air: readonly (number | null)[], step_h = 1): WeatherHour[] {
	return air.map((air_degC, index) => ({
		at_s: START_S + index * step_h * 3600,
		air_degC,
		precipitation_kg_m2: 0.1,
		snowfall_kg_m2: null,
		landSnow_m: null,
		wind_m_s: null
	}));
}

const steady = (count: number, air_degC: number) => Array.from({ length: count }, () => air_degC);

test('a whole day of one temperature is none, and what else was measured stays', () => {
	const given = hours([-7.1, ...steady(24, -18.4), -6.2]);
	const kept = withoutStuckAir(given);
	expect(kept.map(({ air_degC }) => air_degC)).toEqual([
		-7.1,
		...steady(24, NaN).map(() => null),
		-6.2
	]);
	expect(kept.every(({ precipitation_kg_m2 }) => precipitation_kg_m2 === 0.1)).toBe(true);
	expect(given[5]?.air_degC).toBe(-18.4);
});

test('23 hours of one temperature are weather', () => {
	const given = hours([-7, ...steady(23, -3), -4]);
	expect(withoutStuckAir(given)).toEqual(given);
});

test('records every three hours stick as well', () => {
	expect(stuckRuns(hours([1, ...steady(9, -5), 2], 3))).toEqual([[1, 9]]);
	expect(stuckRuns(hours([1, ...steady(7, -5), 2], 3))).toEqual([]);
});

test('an hour without a record does not end a run, half a day without one does', () => {
	expect(stuckRuns(hours([...steady(12, -5), null, ...steady(12, -5)]))).toEqual([[0, 24]]);
	const apart = [...steady(13, -5), ...Array.from({ length: 12 }, () => null), ...steady(13, -5)];
	expect(stuckRuns(hours(apart))).toEqual([]);
});

test('no hours, no runs', () => {
	expect(stuckRuns([])).toEqual([]);
	expect(stuckRuns(hours([null, null]))).toEqual([]);
});
