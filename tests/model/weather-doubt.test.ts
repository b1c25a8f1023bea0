import { expect, test } from 'vitest';
import { addDays } from '../../src/lib/model/calendar.ts';
import type { DayValues, WeatherHour } from '../../src/lib/model/hours-to-days.ts';
import { clockDoubt_h, compareDays, unitDoubt } from '../../src/lib/model/weather-doubt.ts';

/** A fortnight of weather with a cold spell in it. */
const AIR = [-4, -7, -12, -18, -21, -16, -9, -3, 1, 2, -1, -6, -11, -8];
const FALL = [0, 2, 0, 0, 0, 4, 6, 3, 0, 1, 5, 0, 0, 2];

function days(air: readonly number[], fall: readonly number[] = []): DayValues[] {
	return air.map((air_degC, index) => ({
		on: addDays('2027-01-01', index),
		air_degC,
		min_degC: null,
		max_degC: null,
		freezing_degCd: null,
		thawing_degCd: null,
		aboveFreezing_h: null,
		precipitation_kg_m2: fall[index] ?? null,
		snowfall_kg_m2: null,
		landSnow_m: null,
		wind_m_s: null
	}));
}

const wobble = (index: number) => 0.8 * Math.sin(index * 1.7);
const THEIRS = days(AIR, FALL);

test('the same weather with the scatter of two places is not doubted', () => {
	const ours = days(AIR.map((air, index) => air + 1 + wobble(index)));
	expect(unitDoubt(ours, THEIRS)).toBeNull();
	const compared = compareDays(ours, THEIRS);
	expect(compared).toMatchObject({ days: 14 });
	expect(compared?.bias_K).toBeCloseTo(1, 0);
	expect(compared?.spread_K).toBeLessThan(1);
});

test('Fahrenheit taken for Celsius is told as such, with how much warmer it reads', () => {
	const ours = days(AIR.map((air, index) => 1.8 * (air + wobble(index)) + 32));
	const doubt = unitDoubt(ours, THEIRS);
	expect(doubt?.kind).toBe('fahrenheit');
	// Of a mean of -8 °C: -8 × 1.8 + 32 is 17.6, 25.6 warmer.
	expect(doubt).toMatchObject({ bias_K: expect.closeTo(25.6, 0) });
});

test('where the stored record is the one in Fahrenheit, that is told', () => {
	const theirs = days(AIR.map((air) => 1.8 * air + 32));
	expect(unitDoubt(days(AIR), theirs)?.kind).toBe('otherFahrenheit');
});

test('tenths of a degree are told as such', () => {
	expect(unitDoubt(days(AIR.map((air) => 10 * air)), THEIRS)?.kind).toBe('tenths');
});

test('a steady difference that no unit explains is an offset', () => {
	const ours = days(AIR.map((air, index) => air + 9 + wobble(index)));
	expect(unitDoubt(ours, THEIRS)).toMatchObject({ kind: 'offset', bias_K: expect.closeTo(9, 0) });
});

test('amounts in inches or tenths of millimetres are told by how many times they are off', () => {
	const inches = days(
		AIR,
		FALL.map((amount) => amount / 25.4)
	);
	const tenths = days(
		AIR,
		FALL.map((amount) => amount * 10)
	);
	expect(unitDoubt(inches, THEIRS)).toMatchObject({
		kind: 'amounts',
		factor: expect.closeTo(1 / 25.4)
	});
	expect(unitDoubt(tenths, THEIRS)).toMatchObject({ kind: 'amounts', factor: expect.closeTo(10) });
	expect(
		unitDoubt(
			days(
				AIR,
				FALL.map((amount) => amount * 2)
			),
			THEIRS
		)
	).toBeNull();
});

test('four days in common are too few to say anything', () => {
	const ours = days(AIR.map((air) => 1.8 * air + 32)).slice(0, 4);
	expect(compareDays(ours, THEIRS)).toBeNull();
	expect(unitDoubt(ours, THEIRS)).toBeNull();
});

/** Ten days of hours with a day's wave and a front. */
function hours(shift_h: number, offset_K = 0): WeatherHour[] {
	return Array.from({ length: 240 }, (_, index) => ({
		at_s: Date.UTC(2027, 0, 1) / 1000 + index * 3600,
		air_degC: offset_K + wave(index - shift_h),
		precipitation_kg_m2: null,
		snowfall_kg_m2: null,
		landSnow_m: null,
		wind_m_s: null
	}));
}

function wave(hour: number): number {
	const front = 6 * Math.tanh((hour - 120) / 10);
	return -8 + 4 * Math.cos((2 * Math.PI * (hour - 14)) / 24) - front;
}

test.each([2, 3, 6, -5])('a clock that is off by %d hours is told', (shift_h) => {
	expect(clockDoubt_h(hours(shift_h), hours(0))).toBe(shift_h);
	expect(clockDoubt_h(hours(shift_h, 3), hours(0))).toBe(shift_h);
});

test('a right clock at a warmer place is not doubted', () => {
	expect(clockDoubt_h(hours(0, 5), hours(0))).toBeNull();
});

test('steady weather, or two days of it, tell no clock', () => {
	const steady = hours(0).map((hour) => ({ ...hour, air_degC: -5 }));
	expect(clockDoubt_h(steady, steady)).toBeNull();
	expect(clockDoubt_h(hours(6).slice(0, 48), hours(0).slice(0, 48))).toBeNull();
});
