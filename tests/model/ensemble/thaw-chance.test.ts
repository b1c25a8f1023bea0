import { expect, test } from 'vitest';
import { addDays, type IsoDate } from '#lib/model/calendar.ts';
import type { ScenarioWeather } from '#lib/model/ensemble/scenarios.ts';
import { scenarios } from '#lib/model/ensemble/scenarios.ts';
import { thawChance, type ThawChanceInput } from '#lib/model/ensemble/thaw-chance.ts';
import type { SeasonDay } from '#lib/model/season.ts';
import { inventedWeather } from '../../support/invented-climate.ts';
import { column, LAKE, reading, seasonDays } from '../../support/invented-winter.ts';
import { weatherDay } from '../../support/weather-day.ts';

const FROST = -8;
const THAW = 4;
const WARM_DAY: Partial<SeasonDay> = { air_degC: 3, aboveFreezing_h: 24, freezing_degCd: 0 };

/** A future of these daily means, each with a range of 4 K, from 13 January on. */
function future(air_degC: readonly number[], change = {}): ScenarioWeather {
	const days = air_degC.map((mean, index) =>
		weatherDay(addDays('2027-01-13', index), {
			source: 'climate',
			air_degC: mean,
			min_degC: mean - 2,
			max_degC: mean + 2,
			...change
		})
	);
	return { days, from: 'invented' };
}

/** Chances on 10 to 12 January and on the days ahead. */
function chances(change: Partial<ThawChanceInput>): number[] {
	return thawChance({
		days: seasonDays('2027-01-10', [{}, {}, {}]),
		readings: [],
		hasHours: () => false,
		scenarios: [future([FROST, FROST])],
		latitude: 46,
		...change
	}).map(({ pThaw }) => pThaw);
}

test('frost behind and ahead leaves no chance of a thaw', () => {
	expect(chances({})).toEqual([0, 0, 0, 0, 0]);
});

test('the chance is the share of the futures that thaw', () => {
	const all = [future([FROST, THAW]), future([FROST, FROST]), future([FROST, FROST])];
	expect(chances({ scenarios: all })[3]).toBe(0);
	expect(chances({ scenarios: all })[4]).toBeCloseTo(1 / 3, 9);
});

test('a future counts for as much as the members that use it', () => {
	const all = [future([THAW]), future([FROST])];
	expect(chances({ scenarios: all, weights: [3, 1] })[3]).toBeCloseTo(0.75, 9);
	expect(chances({ scenarios: all, weights: [0, 2] })[3]).toBe(0);
});

test('a spell ahead lasts until 72 hours of frost with 15 °C·d', () => {
	const one = [future([THAW, FROST, FROST, FROST, FROST, FROST])];
	// In force on the thaw's day, while three days of frost pass, and no more once they have.
	expect(chances({ scenarios: one }).slice(3)).toEqual([1, 1, 1, 1, 0, 0]);
	const weak = [future([THAW, -4.5, -4.5, -4.5, -4.5, -4.5])];
	expect(chances({ scenarios: weak }).slice(3)).toEqual([1, 1, 1, 1, 1, 0]);
});

test('warm hours after that begin a new spell', () => {
	const one = [future([THAW, FROST, FROST, FROST, FROST, THAW, FROST])];
	expect(chances({ scenarios: one }).slice(3)).toEqual([1, 1, 1, 1, 0, 1, 1]);
});

test('six warm hours are enough, five are not', () => {
	const hours = (aboveFreezing_h: number) =>
		future([-1], { aboveFreezing_h, freezing_degCd: 2, thawing_degCd: 1 });
	expect(chances({ scenarios: [hours(6)] })[3]).toBe(1);
	expect(chances({ scenarios: [hours(5)] })[3]).toBe(0);
});

test('a mean above freezing withholds only where hours are not known', () => {
	const mild = (change = {}) => [future([0.2], { min_degC: -4, max_degC: 4.4, ...change })];
	expect(chances({ scenarios: mild() })[3]).toBe(1);
	const byHours = { aboveFreezing_h: 5, freezing_degCd: 1, thawing_degCd: 1.2 };
	expect(chances({ scenarios: mild(byHours), hasHours: () => true })[3]).toBe(0);
});

test("the last known day's warmth reaches into the first day ahead", () => {
	const days = seasonDays('2027-01-10', [{}, {}, WARM_DAY]);
	expect(chances({ days })).toEqual([0, 0, 1, 1, 1]);
});

test('a spell of known days holds without a hole, and ends ahead once one could end it', () => {
	const days = seasonDays('2027-01-08', [WARM_DAY, {}, {}, {}, {}]);
	expect(chances({ days })).toEqual([1, 1, 1, 1, 1, 0, 0]);
	const drilled = [reading('2027-01-12', [0.3, 0.3, 0.3])];
	expect(chances({ days, readings: drilled })).toEqual([1, 1, 1, 1, 0, 0, 0]);
});

test('no frost ahead ends what only a sound core can end', () => {
	const wet = [reading('2027-01-11', [0.3], { core: 'wet' })];
	const long = [future(Array.from({ length: 20 }, () => FROST))];
	expect(chances({ readings: wet, scenarios: long }).at(-1)).toBe(1);
	const bare = { sun_W_m2: 200, column: column({ clear_m: 0.3 }) };
	const days = seasonDays('2027-01-10', [{}, { ...WARM_DAY, ...bare }, bare]);
	expect(chances({ days, scenarios: long }).at(-1)).toBe(1);
});

test('known days that a scenario tells are taken from it, and none are told twice', () => {
	const days = seasonDays('2027-01-10', [{}, {}, {}, WARM_DAY]);
	const told = thawChance({
		days,
		readings: [],
		hasHours: () => false,
		latitude: 46,
		scenarios: [future([FROST, FROST])]
	});
	expect(told.map(({ on }) => on)).toEqual([
		'2027-01-10',
		'2027-01-11',
		'2027-01-12',
		'2027-01-13',
		'2027-01-14'
	]);
	expect(told[3]?.pThaw).toBe(0);
});

test('without futures only known days are told; without either nothing is', () => {
	expect(chances({ scenarios: [] })).toEqual([0, 0, 0]);
	expect(chances({ scenarios: [], days: [] })).toEqual([]);
	expect(chances({ days: [] })).toEqual([0, 0]);
});

test('over a drawn spring thaw grows certain, and stays a probability', () => {
	const known = inventedWeather('2026-11-01', '2027-01-12', 5);
	const all = scenarios({
		lake: LAKE,
		known,
		past: inventedWeather('2006-07-01', '2027-01-12'),
		asOf: '2027-01-12',
		until: '2027-05-31',
		count: 60,
		seed: 1
	});
	const told = thawChance({
		days: seasonDays('2027-01-12', [{}]),
		readings: [],
		hasHours: (): boolean => false,
		scenarios: all,
		latitude: 46
	});
	const on = (day: IsoDate) => told.find((each) => each.on === day)?.pThaw ?? Number.NaN;
	expect(told.every(({ pThaw }) => pThaw >= 0 && pThaw <= 1)).toBe(true);
	expect(on('2027-01-25')).toBeLessThan(0.6);
	expect(on('2027-05-01')).toBeCloseTo(1, 2);
});
