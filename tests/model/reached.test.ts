import { expect, test } from 'vitest';
import type { CarriedHole, DrilledDay } from '#lib/model/drilled-day.ts';
import type { LoadCase } from '#lib/model/load-case.ts';
import { supportOf } from '#lib/model/reached.ts';
import { METRIC_WORDS } from '#lib/model/words.ts';
import { load } from '../support/invented-winter.ts';

const open = (effective_m: number): CarriedHole => ({
	effective_m,
	kind: 'open',
	secondHand: false
});
const holes = (count: number, effective_m: number): CarriedHole[] =>
	Array.from({ length: count }, () => open(effective_m));

function drilled(change: Partial<DrilledDay> = {}): DrilledDay {
	return {
		on: '2027-01-10',
		age_d: 0,
		holes: holes(5, 0.3),
		hasFlooded: false,
		hasThawed: false,
		hadSpell: false,
		gapDays: 0,
		...change
	};
}

const BOUND_m = 0.22;

function support(each: LoadCase, required_m: number, ...days: DrilledDay[]) {
	return supportOf(each, required_m, BOUND_m, days, METRIC_WORDS);
}

const foot = load('on-foot');
const sled = load('snowmobile');

test('nothing is supported without a hole', () => {
	expect(support(foot, 0.15)).toEqual({ isSupported: false, lacks: 'no hole has been drilled' });
});

test('three holes support people on foot, two do not', () => {
	expect(support(foot, 0.2, drilled({ holes: holes(3, 0.3) })).isSupported).toBe(true);
	expect(support(foot, 0.2, drilled({ holes: holes(2, 0.3) }))).toEqual({
		isSupported: false,
		lacks: '3 holes are asked, 2 holes of 10 Jan count'
	});
});

test('vehicles ask five holes, and everybody that the bound clears it', () => {
	expect(support(sled, 0.18, drilled()).isSupported).toBe(true);
	expect(support(sled, 0.18, drilled({ holes: holes(4, 0.3) })).isSupported).toBe(false);
	expect(support(sled, 0.23, drilled()).isSupported).toBe(false);
});

test('the thinnest hole decides and not their mean', () => {
	const uneven = drilled({ holes: [...holes(4, 0.4), open(0.19)] });
	expect(support(foot, 0.2, uneven)).toMatchObject({ isSupported: false });
	expect(support(foot, 0.19, uneven)).toMatchObject({ isSupported: true, thinnest_m: 0.19 });
});

test('a thinner hole of a later day counts against earlier ones', () => {
	const later = drilled({ on: '2027-01-12', holes: [open(0.1)] });
	const earlier = drilled({ age_d: 2 });
	expect(support(foot, 0.2, later, earlier).isSupported).toBe(false);
	expect(support(foot, 0.2, drilled({ ...later, holes: [open(0.25)] }), earlier).isSupported).toBe(
		true
	);
});

test('holes last seven days', () => {
	expect(support(foot, 0.2, drilled({ age_d: 7 })).isSupported).toBe(true);
	expect(support(foot, 0.2, drilled({ age_d: 8 })).isSupported).toBe(false);
});

test('they last 21 where they clear it one and a half times and nothing has flooded or thawed', () => {
	const ample = drilled({ age_d: 21 });
	expect(support(foot, 0.14, ample)).toMatchObject({ isSupported: true, until: '2027-01-31' });
	expect(support(foot, 0.15, ample).isSupported).toBe(false);
	expect(support(foot, 0.14, { ...ample, age_d: 22 }).isSupported).toBe(false);
	expect(support(foot, 0.14, { ...ample, hasFlooded: true }).isSupported).toBe(false);
	expect(support(foot, 0.14, { ...ample, hasThawed: true }).isSupported).toBe(false);
});

test('holes at a landing or a crack last one day', () => {
	const landing = drilled({ holes: holes(5, 0.3).map((each) => ({ ...each, kind: 'edge' })) });
	expect(support(foot, 0.2, { ...landing, age_d: 1 })).toMatchObject({ until: '2027-01-11' });
	expect(support(foot, 0.2, { ...landing, age_d: 2 }).isSupported).toBe(false);
});

test('a way across a wet crack is supported for one day', () => {
	const across = load('on-foot', { wetCracks: 1 });
	expect(support(across, 0.2, drilled({ age_d: 1 })).isSupported).toBe(true);
	expect(support(across, 0.2, drilled({ age_d: 2 })).isSupported).toBe(false);
});

test('holes at a ridge never support anything', () => {
	const ridge = drilled({ holes: holes(5, 0.9).map((each) => ({ ...each, kind: 'ridge' })) });
	expect(support(foot, 0.1, ridge).isSupported).toBe(false);
});

test('days without a temperature or a spell that has passed since end the support', () => {
	expect(support(foot, 0.2, drilled({ age_d: 2, gapDays: 1 })).isSupported).toBe(false);
	expect(support(foot, 0.2, drilled({ age_d: 6, hadSpell: true })).isSupported).toBe(false);
});
