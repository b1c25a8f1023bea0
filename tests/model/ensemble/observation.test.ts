import { expect, test } from 'vitest';
import { buoyancy_kg_m2, freeboard_m } from '#lib/model/flooding.ts';
import { openMembers } from '#lib/model/ensemble/members.ts';
import { observations, predicted, type Observation } from '#lib/model/ensemble/observation.ts';
import { hole, reading } from '../../support/invented-winter.ts';

const ON = '2027-01-10';
const of = (what: Observation['of'], found: readonly Observation[]) =>
	found.find((each) => each.of === what);

test('one hole of 40 cm scatters about the site by 3.8 cm', () => {
	// √((0.07·40)² + (0.06·40)² + 1²) by hand
	const total = of('total', observations(reading(ON, [0.4]), 0.4));
	expect(total).toMatchObject({ value: 0.4, isLeast: false });
	expect(total?.sd).toBeCloseTo(0.03821, 5);
});

test('a thin reading is no more exact than a thick one where the same is expected', () => {
	const sd = (total_m: number) => of('total', observations(reading(ON, [total_m]), 0.4))?.sd;
	expect(sd(0.05)).toBe(sd(0.75));
});

test('more holes of a place average their own scatter, but not that of the place', () => {
	const sd = (count: number) =>
		of('total', observations(reading(ON, Array<number>(count).fill(0.4)), 0.4))?.sd ?? NaN;
	// √(2.8² + (2.4² + 1²)/4) by hand: 3.5 and 3 cm times 40/50
	expect(sd(4)).toBeCloseTo(0.03087, 5);
	expect(sd(4)).toBeLessThan(sd(2));
	expect(sd(1000)).toBeGreaterThan(0.035 * 0.8);
});

test('holes without a thickness do not sharpen that of the others', () => {
	const holes = [hole({ total_m: 0.4 }), hole({ snow_m: 0.1 }), hole({ freeboard_m: 0.02 })];
	const found = observations(reading(ON, [], { holes }), 0.4);
	expect(of('total', found)?.sd).toBeCloseTo(0.03821, 5);
	expect(found.map((each) => each.of)).toEqual(['total', 'snow', 'freeboard']);
});

test('a reading is taken apart into what was measured', () => {
	const holes = [
		hole({ clear_m: 0.3, white_m: 0.1, snow_m: 0.08, slush_m: 0, freeboard_m: -0.01 })
	];
	const found = observations(reading(ON, [], { holes }), 0.4);
	expect(Object.fromEntries(found.map((each) => [each.of, each.value]))).toEqual({
		total: 0.4,
		whiteShare: 0.25,
		snow: 0.08,
		slush: 0,
		freeboard: -0.01
	});
	expect(found.every(({ sd, isLeast }) => sd > 0 && !isLeast)).toBe(true);
});

test('"at least" says nothing but a least thickness, "went through" nothing at all', () => {
	const least = observations(reading(ON, [0.2], { kind: 'atLeast' }), 0.4);
	expect(least.map(({ of: what, isLeast }) => [what, isLeast])).toEqual([['total', true]]);
	expect(observations(reading(ON, [0.02], { kind: 'wentThrough' }), 0.4)).toEqual([]);
	expect(observations(reading(ON, [], { holes: [] }), 0.4)).toEqual([]);
});

test('members say what they should have shown', () => {
	const members = openMembers(2);
	members.clear_m[0] = 0.3;
	members.white_m[0] = 0.1;
	members.snow_m[0] = 0.2;
	members.snowDensity_kg_m3[0] = 250;
	members.slush_m[0] = 0.05;
	const says = (what: Observation['of']) => [...predicted(what, members)];
	expect(says('total')[0]).toBeCloseTo(0.4, 12);
	expect(says('whiteShare')[0]).toBeCloseTo(0.25, 12);
	expect(says('snow')).toEqual([0.2, 0]);
	expect(says('slush')).toEqual([0.05, 0]);
	expect(says('freeboard')[0]).toBe(freeboard_m(buoyancy_kg_m2(0.3, 0.1), 50));
	expect(says('total')[1]).toBe(0);
	expect(says('whiteShare')[1]).toBe(0);
});
