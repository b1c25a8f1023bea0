import { expect, test } from 'vitest';
import { observedDay as observed } from '../../src/lib/model/observed-day.ts';
import type { DayValues } from '../../src/lib/model/hours-to-days.ts';

const observedDay = (hourly: DayValues | null, daily: DayValues | null) =>
	observed(hourly, daily, 61);

function day(values: Partial<DayValues>): DayValues {
	return {
		on: '2027-01-10',
		air_degC: null,
		min_degC: null,
		max_degC: null,
		freezing_degCd: null,
		thawing_degCd: null,
		aboveFreezing_h: null,
		precipitation_kg_m2: null,
		snowfall_kg_m2: null,
		landSnow_m: null,
		wind_m_s: null,
		...values
	};
}

test('hours come first and a daily record fills what they lack', () => {
	const hourly = day({ air_degC: -5, freezing_degCd: 6, thawing_degCd: 1, aboveFreezing_h: 6 });
	const daily = day({ air_degC: -9, min_degC: -12, precipitation_kg_m2: 3 });
	expect(observedDay(hourly, daily)).toMatchObject({
		source: 'observed',
		air_degC: -5,
		min_degC: null,
		freezing_degCd: 6,
		precipitation_kg_m2: 3
	});
});

test('the temperature comes whole from the daily record when the hours do not know it', () => {
	const hourly = day({ precipitation_kg_m2: 1 });
	const daily = day({ air_degC: -9, min_degC: -12, max_degC: -4, precipitation_kg_m2: 3 });
	expect(observedDay(hourly, daily)).toMatchObject({
		air_degC: -9,
		max_degC: -4,
		precipitation_kg_m2: 1
	});
});

test('a day of minimum and maximum alone has the middle of them as its mean', () => {
	expect(observedDay(null, day({ min_degC: -10, max_degC: 2 }))?.air_degC).toBe(-4);
	expect(observedDay(null, day({ min_degC: -10 }))?.air_degC).toBeNull();
});

test('a range that does not hold the mean is dropped', () => {
	const merged = observedDay(null, day({ air_degC: -1, min_degC: -10, max_degC: -2 }));
	expect(merged).toMatchObject({ air_degC: -1, min_degC: null, max_degC: null });
});

test('nothing known is no day', () => {
	expect(observedDay(null, null)).toBeNull();
});
