import { expect, test } from 'vitest';
import { anchorSteps, farReadings, growth_m_d } from '#lib/model/anchor-steps.ts';
import type { SeasonDay } from '#lib/model/season.ts';
import { column, reading, seasonDays } from '../support/invented-winter.ts';

const thick = (clear_m: number): Partial<SeasonDay> => ({ column: column({ clear_m }) });
const read = reading('2027-01-12', [0.1]);
const season = seasonDays('2027-01-10', [
	thick(0.2),
	thick(0.21),
	{ ...thick(0.1), anchoredBy: [read.id] }
]);
const without = () => seasonDays('2027-01-10', [thick(0.2), thick(0.21), thick(0.22)]);

test('where a reading moved the estimate stands before and after', () => {
	expect(anchorSteps(season, [read], without)).toEqual([
		{ on: '2027-01-12', readingIds: [read.id], before_m: 0.22, after_m: 0.1 }
	]);
});

test('the season without a reading goes by the earlier ones', () => {
	const early = reading('2027-01-11', [0.21], { id: 'early' });
	const seen: string[][] = [];
	anchorSteps(season, [early, read], (readings) => {
		seen.push(readings.map((each) => each.id));
		return without();
	});
	expect(seen).toEqual([['early']]);
});

test('growth of a day that was read goes by what had been estimated', () => {
	const steps = anchorSteps(season, [read], without);
	expect(growth_m_d(season, '2027-01-12', steps)).toBeCloseTo(0.01, 9);
	expect(growth_m_d(season, '2027-01-10', steps)).toBeNull();
});

const step = (before_m: number, after_m: number) => ({
	on: '2027-01-12',
	readingIds: ['r'],
	before_m,
	after_m
});

test('a reading is far off by 10 cm and half of the estimate', () => {
	expect(farReadings([step(0.22, 0.1)])).toEqual(['r']);
	expect(farReadings([step(0.5, 0.3)])).toEqual([]);
	expect(farReadings([step(0.05, 0.14)])).toEqual([]);
});
