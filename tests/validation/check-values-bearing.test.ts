import { expect, test } from 'vitest';
import {
	allowable_kg,
	armyRule_in,
	effective_m,
	goldCoefficient_MPa,
	goldCoefficient_psi,
	goldThickness_m
} from '#lib/model/bearing.ts';
import { ORDINARY, requirement } from '#lib/model/requirement.ts';
import { METRIC_WORDS } from '#lib/model/words.ts';
import { statusOf } from '#lib/model/status.ts';
import { warmSpells } from '#lib/model/warm-spell.ts';
import { LOADS, MINIMUMS, load, ownLoad, seasonDays, siteDay } from '../support/invented-winter.ts';

const POUND_kg = 0.45359237;
const INCH_m = 0.0254;
const exact = 1e-9;

/** Published or computed values. The basis and its confidence stand beside each. */
test.each([
	{
		row: '35: Gold at A = 3.5 over 20 cm is 1400 kg',
		value: () => allowable_kg(0.2),
		expected: 1400,
		tolerance: exact,
		basis: 'Gold 1971 [R]'
	},
	{
		row: '36: Gold at 50 psi over 8 in is 3200 lb',
		value: () => allowable_kg(8 * INCH_m, 1, 50 / goldCoefficient_psi(1)) / POUND_kg,
		expected: 3200,
		tolerance: 1e-6,
		basis: 'Gold 1971 [R]'
	},
	{
		row: '37: 2000 kg at A = 3.5 ask 23.90 cm',
		value: () => goldThickness_m(2000) * 100,
		expected: 23.9,
		tolerance: 0.01,
		basis: 'Gold 1971, computed [C]'
	},
	{
		row: '38: A = 3.5 is 49.78 psi',
		value: () => goldCoefficient_psi(3.5),
		expected: 49.78,
		tolerance: 0.01,
		basis: 'units [C]'
	},
	{
		row: '38: A = 3.5 is 0.3432 MPa',
		value: () => goldCoefficient_MPa(3.5),
		expected: 0.3432,
		tolerance: 0.0005,
		basis: 'units [C]'
	},
	{
		row: '39: 15 cm clear and 10 cm white count as 20 cm',
		value: () => effective_m({ clear_m: 0.15, white_m: 0.1 }) * 100,
		expected: 20,
		tolerance: exact,
		basis: 'half for white ice, TM 5-852-1 [R]'
	},
	{
		row: '40: 20 cm white alone count as 10 cm',
		value: () => effective_m({ clear_m: 0, white_m: 0.2 }) * 100,
		expected: 10,
		tolerance: exact,
		basis: 'half for white ice [C]'
	},
	{
		row: '40: 20 cm white alone carry 350 kg at A = 3.5',
		value: () => allowable_kg(effective_m({ clear_m: 0, white_m: 0.2 })),
		expected: 350,
		tolerance: exact,
		basis: 'Gold 1971 on half the thickness [C]'
	},
	{
		row: '41: h = 4 √P asks 8.0 in under 4 short tons',
		value: () => armyRule_in(4),
		expected: 8,
		tolerance: exact,
		basis: 'TM 5-852-1 rough guide [R]'
	},
	{
		row: '42: with S = 2, 500 lb ask 4.0 in',
		value: () => armyRule_in(500 / 2000, 2),
		expected: 4,
		tolerance: exact,
		basis: 'Smith 2004 [R]'
	},
	{
		row: '50: one wet crack leaves 1575 kg over 30 cm at A = 3.5',
		value: () => allowable_kg(0.3, 0.5),
		expected: 1575,
		tolerance: exact,
		basis: 'half the load at a wet crack [M-hi]'
	}
])('$row ($basis)', ({ value, expected, tolerance }) => {
	expect(Math.abs(value() - expected)).toBeLessThanOrEqual(tolerance);
});

test('48: seven hours above freezing in 24 double the strict 15 cm on foot to 30 (Minnesota DNR 2013 [R2])', () => {
	const days = seasonDays('2027-01-10', [{}, { aboveFreezing_h: 7 }]);
	const isWarmSpell = warmSpells(days, [], () => true).at(-1)?.state === 'doubled';
	const asked = requirement(load('on-foot'), MINIMUMS, 'strict', { ...ORDINARY, isWarmSpell });
	expect(asked.required_m).toBeCloseTo(0.3, 9);
});

test('49: after 24 hours above freezing nothing counts as reached (Minnesota DNR [R2], TM 5-852-1 [R])', () => {
	const days = seasonDays('2027-01-10', [{}, { aboveFreezing_h: 24, air_degC: 2 }]);
	const warm = warmSpells(days, [], () => true).at(-1) ?? null;
	const statuses = LOADS.map(
		(each) =>
			statusOf({
				load: each,
				requirement: requirement(each, MINIMUMS, 'common'),
				season: days.map((day) => siteDay(day)),
				asOf: '2027-01-11',
				warm,
				drilled: [],
				iceOutOn: null,
				words: METRIC_WORDS
			}).status
	);
	expect(new Set(statuses)).toEqual(new Set(['withheld', 'askAnEngineer']));
});

test('51: a lake requirement of 20 cm is 23.0 cm on a river (older Canadian table [R2], [C])', () => {
	const mass_kg = allowable_kg(0.2);
	const river = requirement(ownLoad(mass_kg), MINIMUMS, 'strict', { ...ORDINARY, isRiver: true });
	expect(requirement(ownLoad(mass_kg), MINIMUMS, 'strict').parts?.gold_m).toBeCloseTo(0.2, 9);
	expect(river.parts?.gold_m).toBeCloseTo(0.23, 9);
	expect(river.required_m).toBeGreaterThanOrEqual(0.23);
});

/** The public table of thickness by load, at A = 3.5 and 4, in centimetres. [C] from Gold 1971 */
test.each([
	[100, 5.3, 5.0],
	[500, 12.0, 11.2],
	[1800, 22.7, 21.2],
	[3200, 30.2, 28.3],
	[4500, 35.9, 33.5],
	[10000, 53.5, 50.0]
])('%d kg ask %d cm at A = 3.5 and %d cm at A = 4', (mass_kg, at35_cm, at4_cm) => {
	expect(goldThickness_m(mass_kg) * 100).toBeCloseTo(at35_cm, 1);
	expect(goldThickness_m(mass_kg, 1, 4) * 100).toBeCloseTo(at4_cm, 1);
});
