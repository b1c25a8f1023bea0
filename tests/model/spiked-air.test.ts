import fc from 'fast-check';
import { expect, test } from 'vitest';
import { spikedDays, spikedHours, withoutColdSpikes } from '../../src/lib/model/spiked-air.ts';

/** One hour after the other, or every so many. */
function hours(air: readonly (number | null)[], step_h = 1) {
	return air.map((air_degC, index) => ({ at_s: index * step_h * 3600, air_degC }));
}

const steady = (count: number, air_degC: number) => Array.from({ length: count }, () => air_degC);
const coldAt = (air: readonly (number | null)[], step_h = 1) =>
	spikedHours(hours(air, step_h), 'colder');

test('an hour of −73 °C among some of −5 °C is no weather, nor are six', () => {
	expect(coldAt([...steady(20, -5), -73, ...steady(20, -5)])).toEqual([20]);
	expect(coldAt([...steady(20, -5), ...steady(6, -73), ...steady(20, -5)])).toEqual([
		20, 21, 22, 23, 24, 25
	]);
	expect(coldAt([...steady(7, -5), null, -73, null, ...steady(7, -5)])).toEqual([8]);
});

test('a slip that was interpolated between values every three hours is left out but for its feet', () => {
	const slope = [-5, -28, -50, -73, -50, -28, -5];
	expect(coldAt([...steady(9, -5), ...slope, ...steady(9, -5)])).toEqual([11, 12, 13]);
	expect(coldAt([-5, -5, -73, -5, -5], 6)).toEqual([2]);
});

test('the first and the last hours of a record are held against those on their one side', () => {
	expect(coldAt([-73, -73, -73, ...steady(30, -5)])).toEqual([0, 1, 2]);
	expect(coldAt([...steady(30, -5), -73])).toEqual([30]);
	// On one side alone what lies more than three hours off tells nothing.
	expect(coldAt([...steady(30, -5), null, null, -73])).toEqual([32]);
	expect(coldAt([...steady(30, -5), null, null, null, -73])).toEqual([]);
});

test('cold that stays is weather, however fast it came', () => {
	expect(coldAt([...steady(24, 7), ...steady(30, -41)])).toEqual([]);
	expect(coldAt([...steady(24, 7), ...steady(12, -41), ...steady(24, 7)])).toEqual([]);
	// A burst of warmth into cold, the fastest change on record.
	const burst = [...steady(12, -20), 7, 12, ...steady(12, -20)];
	expect(coldAt(burst)).toEqual([]);
	expect(spikedHours(hours(burst), 'warmer')).toEqual([13]);
});

test('a day that swings by 45 K, as in a hollow, is weather', () => {
	const swing = Array.from(
		{ length: 96 },
		(_, at) => -20 + 22.5 * Math.cos((at / 24) * 2 * Math.PI)
	);
	expect(coldAt(swing)).toEqual([]);
	expect(spikedHours(hours(swing), 'warmer')).toEqual([]);
});

test('warmth that comes so is told and stays', () => {
	const given = hours([...steady(9, -5), 45, ...steady(9, -5)]);
	expect(spikedHours(given, 'warmer')).toEqual([9]);
	expect(withoutColdSpikes(given)).toBe(given);
});

test('a day’s mean far below the days beside it is no weather, and a cold week is', () => {
	const days = (air: readonly number[]) =>
		air.map((air_degC, index) => ({
			on: `2027-01-${index + 10}`,
			air_degC,
			min_degC: null,
			max_degC: null
		}));
	expect(spikedDays(days([-5, -6, -73, -5, -4]), 'colder')).toEqual([2]);
	expect(spikedDays(days([-5, -6, -5, -4, -73]), 'colder')).toEqual([4]);
	expect(spikedDays(days([-2, -36, -38, -37, -40]), 'colder')).toEqual([]);
	expect(spikedDays(days([-2, -5, -4, -3, -38]), 'colder')).toEqual([]);
});

test('whatever the hours are, only cold is let go, and nothing where no two are 30 K apart', () => {
	const air = fc.option(fc.integer({ min: -75, max: 45 }), { nil: null });
	fc.assert(
		fc.property(fc.array(air, { maxLength: 60 }), (given) => {
			const kept = withoutColdSpikes(hours(given)).map(({ air_degC }) => air_degC);
			const known = given.filter((value) => value !== null);
			const lost = given.filter((value, at) => value !== null && kept[at] === null);
			const rest = kept.filter((value) => value !== null);
			expect(rest.length + lost.length).toBe(known.length);
			if (lost.length > 0) expect(Math.max(...rest)).toBe(Math.max(...known));
			if (Math.max(...known) - Math.min(...known) <= 30) expect(lost).toEqual([]);
		})
	);
});
