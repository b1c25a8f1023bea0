import fc from 'fast-check';
import { expect, test } from 'vitest';
import { goldThickness_m } from '#lib/model/bearing.ts';
import { chartMinimum, type LoadCase, type Trailer } from '#lib/model/load-case.ts';
import { ORDINARY, requirement, type Conditions } from '#lib/model/requirement.ts';
import { LOADS, MINIMUMS, load, ownLoad } from '../support/invented-winter.ts';

const asked_m = (each: LoadCase, conditions = ORDINARY, set: 'strict' | 'common' = 'strict') =>
	requirement(each, MINIMUMS, set, conditions).required_m;
const gold_m = (each: LoadCase, conditions = ORDINARY) =>
	requirement(each, MINIMUMS, 'strict', conditions).parts?.gold_m;
const codes = (each: LoadCase, conditions = ORDINARY) =>
	requirement(each, MINIMUMS, 'strict', conditions).rules.map((rule) => rule.code);

test('the larger of chart and formula counts', () => {
	expect(asked_m(load('on-foot'))).toBe(0.15);
	expect(asked_m(load('car', { mass_kg: 1800, wetCracks: 2 }))).toBeCloseTo(0.4536, 4);
});

test('a load without a row asks what the formula says, but no less than the charts ask of anybody', () => {
	expect(gold_m(ownLoad(2000))).toBeCloseTo(0.239, 4);
	expect(asked_m({ ...ownLoad(399), wetCracks: 2 })).toBeCloseTo(0.2135, 4);
	expect(asked_m(ownLoad(60))).toBe(0.15);
	expect(codes(ownLoad(60))).toContain('leastOfCharts');
});

test('no load asks for less than a machine that weighs no more, by either set and whatever its row', () => {
	expect(asked_m(ownLoad(399))).toBe(0.15);
	expect(asked_m(ownLoad(400))).toBe(0.25);
	expect(asked_m(ownLoad(1500))).toBe(0.4);
	expect(asked_m(ownLoad(1500), ORDINARY, 'common')).toBe(0.3);
	expect(asked_m(load('on-foot', { mass_kg: 4600 }))).toBe(0.51);
	expect(codes(ownLoad(1500))).toContain('chartByMass');
	expect(codes(load('car'))).not.toContain('chartByMass');
	expect(requirement(ownLoad(1500), MINIMUMS, 'strict').spacing_m).toBeCloseTo(40, 9);
	const drawn = { ...ownLoad(600), trailer: { mass_kg: 800, apart_m: null } };
	expect(asked_m(drawn)).toBe(0.4);
});

test('what is drawn asks for no less than it would alone, together or apart', () => {
	for (const mass_kg of [450, 1300, 2500, 4500]) {
		for (const apart_m of [null, 60]) {
			for (const set of ['strict', 'common'] as const) {
				const drawn = load('snowmobile', { trailer: { mass_kg, apart_m } });
				const alone_m = asked_m(ownLoad(mass_kg), ORDINARY, set) ?? Infinity;
				expect(asked_m(drawn, ORDINARY, set)).toBeGreaterThanOrEqual(alone_m);
			}
		}
	}
	expect(codes(load('snowmobile', { trailer: { mass_kg: 4500, apart_m: 60 } }))).toContain(
		'chartByMass'
	);
});

test('every load of the list is held against its own row', () => {
	for (const each of LOADS) expect(codes(each)).not.toContain('chartByMass');
});

test('what stands is held against that row undoubled, and against the double of all else', () => {
	const standing = (mass_kg: number, parked_h: number) =>
		asked_m({ ...ownLoad(mass_kg), parked_h });
	expect(standing(1300, 3)).toBe(0.4);
	expect(standing(1900, 3)).toBeCloseTo(2 * goldThickness_m(1900), 9);
});

test('a group on foot is held against the row for groups', () => {
	expect(asked_m(load('on-foot', { group: true }))).toBe(0.2);
});

test('parked more than two hours doubles both chart and formula, two hours do not', () => {
	expect(asked_m(load('car', { parked_h: 2 }))).toBe(0.4);
	expect(asked_m(load('car', { parked_h: 2.5 }))).toBe(0.8);
	expect(codes(load('car', { parked_h: 3 }))).toContain('parked');
});

test('a current on the way and a river each ask 15 % more, not both at once', () => {
	const river = { ...ORDINARY, isRiver: true };
	expect(asked_m(load('car', { current: true }))).toBeCloseTo(0.46, 9);
	expect(asked_m(load('car', { current: true }), river)).toBeCloseTo(0.46, 9);
});

test('wet cracks enter under the root: half the load, a quarter where two meet', () => {
	expect(gold_m(ownLoad(2000))).toBeCloseTo(0.239, 4);
	expect(gold_m({ ...ownLoad(2000), wetCracks: 1 })).toBeCloseTo(0.239 * Math.SQRT2, 3);
	expect(asked_m({ ...ownLoad(2000), wetCracks: 2 })).toBeCloseTo(0.239 * 2, 3);
});

test('a warm spell doubles what is asked for today but not the base that dates go by', () => {
	const warm = requirement(load('car'), MINIMUMS, 'strict', { ...ORDINARY, isWarmSpell: true });
	expect(warm.required_m).toBe(0.8);
	expect(warm.base_m).toBe(0.4);
});

test('sudden cold halves the load in the formula', () => {
	const snap = { ...ORDINARY, isColdSnap: true };
	expect(gold_m(ownLoad(2000), snap)).toBeCloseTo(0.239 * Math.SQRT2, 3);
	expect(codes(ownLoad(2000), snap)).toContain('coldSnap');
});

test('above 5 t there is no figure but an engineer', () => {
	expect(gold_m(ownLoad(5000))).toBeCloseTo(0.378, 3);
	const heavy = requirement(ownLoad(5001), MINIMUMS, 'strict');
	expect(heavy.required_m).toBeNull();
	expect(heavy.rules.map((rule) => rule.code)).toEqual(['askAnEngineer']);
});

test('a truck parked with its shelter is for an engineer in both sets; judged alone at least 83 cm', () => {
	for (const set of ['strict', 'common'] as const) {
		const asked = requirement(load('truck-with-shelter'), MINIMUMS, set);
		expect(asked.required_m).toBeNull();
		expect(asked.rules[0]?.text).toContain('83 cm');
	}
});

test('every rule names its source', () => {
	const all: Conditions = { isRiver: true, isWarmSpell: true, isColdSnap: true, snow_kg_m2: 20 };
	for (const each of LOADS) {
		const { rules } = requirement({ ...each, wetCracks: 2, parked_h: 5 }, MINIMUMS, 'common', all);
		expect(rules.every((rule) => rule.source.length > 3 && rule.text.length > 10)).toBe(true);
	}
});

const anyLoad = fc.record({
	id: fc.constant('any'),
	name: fc.constant('any'),
	mass_kg: fc.double({ min: 1, max: 5000, noNaN: true }),
	use: fc.constantFrom('onFoot', 'snowmobile', 'car', 'heavyTruck', null),
	parked_h: fc.constantFrom(0, 1, 5),
	wetCracks: fc.constantFrom(0, 1, 2),
	current: fc.boolean(),
	group: fc.boolean(),
	trailer: fc.option(
		fc.record({
			mass_kg: fc.double({ min: 1, max: 3000, noNaN: true }),
			apart_m: fc.option(fc.double({ min: 0, max: 200, noNaN: true }))
		})
	),
	count: fc.integer({ min: 1, max: 4 }),
	spacing_m: fc.option(fc.double({ min: 0, max: 200, noNaN: true }))
}) as fc.Arbitrary<LoadCase>;
const anyConditions = fc.record({
	isRiver: fc.boolean(),
	isWarmSpell: fc.boolean(),
	isColdSnap: fc.boolean(),
	snow_kg_m2: fc.double({ min: 0, max: 60, noNaN: true })
});

function heavier(trailer: Trailer | null): Trailer {
	return trailer === null
		? { mass_kg: 200, apart_m: null }
		: { ...trailer, mass_kg: trailer.mass_kg * 1.05 };
}

test('no further circumstance of the way or the day ever lowers the requirement', () => {
	fc.assert(
		fc.property(anyLoad, anyConditions, (each, conditions) => {
			const before = asked_m(each, conditions) ?? Infinity;
			const worse: (number | null)[] = [
				asked_m({ ...each, parked_h: 24 }, conditions),
				asked_m({ ...each, wetCracks: 2 }, conditions),
				asked_m({ ...each, current: true }, conditions),
				asked_m({ ...each, group: true }, conditions),
				asked_m({ ...each, count: each.count + 1 }, conditions),
				asked_m({ ...each, spacing_m: null }, conditions),
				asked_m({ ...each, trailer: heavier(each.trailer) }, conditions),
				asked_m(
					{ ...each, trailer: each.trailer && { ...each.trailer, apart_m: null } },
					conditions
				),
				asked_m({ ...each, mass_kg: each.mass_kg * 1.01 }, conditions),
				asked_m({ ...each, parked_h: each.parked_h + 1 }, conditions),
				asked_m(each, { ...conditions, snow_kg_m2: conditions.snow_kg_m2 + 5 }),
				asked_m(each, { ...conditions, isRiver: true }),
				asked_m(each, { ...conditions, isWarmSpell: true }),
				asked_m(each, { ...conditions, isColdSnap: true })
			];
			for (const after of worse) expect(after ?? Infinity).toBeGreaterThanOrEqual(before);
		})
	);
});

test('what is asked for today is never below the base', () => {
	fc.assert(
		fc.property(anyLoad, anyConditions, (each, conditions) => {
			const { required_m, base_m } = requirement(each, MINIMUMS, 'strict', conditions);
			expect(required_m ?? 0).toBeGreaterThanOrEqual(base_m ?? 0);
		})
	);
});

/** The rows of data/charts, written out: from which mass on which thickness is asked for. */
const STRICT_AND_COMMON_BY_MASS = [
	[400, 0.25, 0.18],
	[500, 0.25, 0.2],
	[1300, 0.4, 0.3],
	[2500, 0.4, 0.38],
	[4500, 0.51, 0.43]
] as const;

/** The most of chart, formula and the machines that weigh no more, times the factors: without all others. */
function askedAlone_m(each: LoadCase, conditions: Conditions, set: 'strict' | 'common'): number {
	const use = each.use ?? 'onFoot';
	const row = chartMinimum(MINIMUMS, set, each.group && use === 'onFoot' ? 'group' : use);
	const group_m = each.group ? (chartMinimum(MINIMUMS, set, 'group').thickness_m ?? 0) : 0;
	const chart_m = Math.max(row.thickness_m ?? Infinity, group_m);
	const byMass_m = Math.max(
		...STRICT_AND_COMMON_BY_MASS.map(([from_kg, strict_m, common_m]) =>
			each.mass_kg < from_kg ? 0 : set === 'strict' ? strict_m : common_m
		)
	);
	const onLoad = { 0: 1, 1: 0.5, 2: 0.25 }[each.wetCracks] * (conditions.isColdSnap ? 0.5 : 1);
	const onThickness =
		(each.current || conditions.isRiver ? 1.15 : 1) * (conditions.isWarmSpell ? 2 : 1);
	const standing = each.parked_h > 2 ? 2 : 1;
	const own_m = Math.max(chart_m, goldThickness_m(each.mass_kg, onLoad)) * standing;
	return Math.max(own_m, byMass_m) * onThickness;
}

test('no load asks less than by chart and formula alone, and one that moves alone asks the same', () => {
	fc.assert(
		fc.property(anyLoad, anyConditions, fc.constantFrom('strict', 'common'), (each, day, set) => {
			const alone_m = askedAlone_m(each, day, set);
			expect(asked_m(each, day, set) ?? Infinity).toBeGreaterThanOrEqual(alone_m - 1e-12);
			const alone = { ...each, parked_h: 0, count: 1, trailer: null };
			expect(asked_m(alone, day, set)).toBeCloseTo(askedAlone_m(alone, day, set), 12);
		})
	);
});
