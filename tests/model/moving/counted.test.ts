import { expect, test } from 'vitest';
import type { LoadCase } from '#lib/model/load-case.ts';
import { countedOf } from '#lib/model/moving/counted.ts';
import { requirement } from '#lib/model/requirement.ts';
import { load, MINIMUMS, ownLoad } from '../../support/invented-winter.ts';

/** As if each asked for 30 cm, so that 30 m part them. */
const counted = (each: LoadCase) => countedOf(each, () => 0.3);
const asked = (each: LoadCase) => requirement(each, MINIMUMS, 'strict');
const PICKUP = load('half-ton');

test('a load that goes alone counts as itself', () => {
	expect(counted(PICKUP)).toMatchObject({
		mass_kg: 2500,
		added_kg: 0,
		trailer: null,
		others: null
	});
});

test('a trailer counts with what draws it unless it is kept as far behind as the spacing', () => {
	const drawing = (apart_m: number | null) =>
		counted({ ...PICKUP, trailer: { mass_kg: 900, apart_m } });
	expect(drawing(null)).toMatchObject({ mass_kg: 3400, added_kg: 900, trailer: 'together' });
	expect(drawing(29.9)).toMatchObject({ mass_kg: 3400, trailer: 'together' });
	expect(drawing(30)).toMatchObject({ mass_kg: 2500, added_kg: 0, trailer: 'apart' });
});

test('of a trailer kept apart that is heavier than what draws it, the heavier counts', () => {
	expect(counted({ ...PICKUP, trailer: { mass_kg: 3000, apart_m: 40 } }).mass_kg).toBe(3000);
});

test('loads nearer than the spacing are added together, trailers and all', () => {
	const three = { ...load('snowmobile'), count: 3, trailer: { mass_kg: 100, apart_m: 35 } };
	expect(counted({ ...three, spacing_m: null })).toMatchObject({
		mass_kg: 1500,
		added_kg: 1100,
		others: 'together'
	});
	expect(counted({ ...three, spacing_m: 30 })).toMatchObject({ mass_kg: 400, others: 'apart' });
});

test('what is parked is never apart at less than 15 m', () => {
	const huts = { ...ownLoad(100), count: 2, spacing_m: 12 };
	const at10_cm = (parked_h: number) => countedOf({ ...huts, parked_h }, () => 0.1).others;
	expect([at10_cm(0), at10_cm(5)]).toEqual(['apart', 'together']);
});

test('the requirement asks the spacing of the ice that one of them asks for', () => {
	const pair = { ...PICKUP, count: 2 };
	const near = asked({ ...pair, spacing_m: 39 });
	const far = asked({ ...pair, spacing_m: 40 });
	expect(near.counted_kg).toBe(5000);
	// Strict charts ask 40 cm for one; the second adds what the formula asks for 2500 kg, 26.7 cm.
	expect(near.required_m).toBeCloseTo(Math.hypot(0.4, Math.sqrt(2500 / 3.5) / 100), 9);
	const text = (code: string) => near.rules.find((rule) => rule.code === code)?.text;
	// The chart is quoted as it was published, what was added to it apart.
	expect(text('chartMinimum')).toContain('40 cm');
	expect(text('addedToChart')).toContain('49 cm');
	expect([far.counted_kg, far.required_m]).toEqual([2500, 0.4]);
	expect(near.rules.map(({ code }) => code)).toContain('group-together');
	expect(near.rules.find(({ code }) => code === 'group-together')?.text).toContain('40 m');
});

test('three pickups close together are past 5 t: an engineer', () => {
	const three = asked({ ...PICKUP, count: 3 });
	expect(three.required_m).toBeNull();
	expect(three.rules[0]?.text).toContain('5,000 kg at one place');
	expect(asked({ ...PICKUP, count: 3, spacing_m: 60 }).required_m).toBe(0.4);
});

test('several people close together are held against the row for groups', () => {
	const four = { ...load('on-foot'), count: 4 };
	expect(asked(four).required_m).toBe(0.2);
	expect(asked({ ...four, spacing_m: 20 }).required_m).toBe(0.15);
});
