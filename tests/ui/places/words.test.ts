import { expect, test } from 'vitest';
import type { PlaceCheck } from '#lib/model/places/place-check.ts';
import type { RouteAnswer } from '#lib/model/places/route-answer.ts';
import { holePlan } from '#lib/model/places/hole-plan.ts';
import { roundWay, spacing, way } from '#lib/ui/format/way.ts';
import { againWords } from '#lib/ui/places/again-words.ts';
import { checkWords } from '#lib/ui/places/check-words.ts';
import { placesHeadline } from '#lib/ui/places/headline.ts';
import { holeRunWords } from '#lib/ui/places/hole-runs.ts';
import { listed, routeSentence } from '#lib/ui/places/route-words.ts';
import { spacingWords } from '#lib/ui/places/spacing-words.ts';
import type { Units } from '#lib/ui/units-setting.ts';
import { plain, route } from '../../support/invented-route.ts';

const METRIC: Units = { measure: 'metric', mass: 'kg' };
const FEET: Units = { measure: 'imperial', mass: 'lb' };
const TODAY = '2027-02-10';

const NEVER: PlaceCheck = {
	state: 'neverDrilled',
	lastOn: null,
	drilledOn: null,
	until: null,
	effective_m: null,
	holes: 0,
	isHalved: false
};
const COUNTS: PlaceCheck = {
	...NEVER,
	state: 'counts',
	lastOn: TODAY,
	drilledOn: TODAY,
	until: '2027-02-11',
	effective_m: 0.129,
	holes: 2
};

test('what counts is rounded down and says until when', () => {
	expect(checkWords(COUNTS, TODAY, METRIC)).toBe(
		'2 holes, the thinnest counts as 12 cm; until 11 Feb at most.'
	);
	expect(checkWords({ ...COUNTS, isHalved: true }, TODAY, METRIC)).toContain('half');
});

test('what does not count says why', () => {
	const old = {
		...COUNTS,
		state: 'tooOld' as const,
		lastOn: '2027-02-01',
		drilledOn: '2027-02-01'
	};
	expect(checkWords(old, TODAY, METRIC)).toContain('too old');
	expect(checkWords(NEVER, TODAY, METRIC)).toBe('Nobody has drilled here this winter.');
	expect(checkWords({ ...NEVER, lastOn: TODAY }, TODAY, METRIC)).toContain('Last looked at today');
	expect(checkWords({ ...NEVER, state: 'broke', lastOn: TODAY }, TODAY, METRIC)).toContain(
		'went through'
	);
});

test('the headline counts what is not known, and one place reads as one', () => {
	const spot = (name: string, check: PlaceCheck) => ({ spot: { name }, check });
	expect(placesHeadline([], METRIC).rest).toContain('no sign');
	expect(placesHeadline([spot('A', NEVER)], METRIC).main).toBe(
		'1 weak spot, and of none is it known what it carries.'
	);
	const both = placesHeadline([spot('A', NEVER), spot('B', COUNTS)], METRIC);
	expect(both.main).toBe('2 weak spots; of 1 it is not known what they carry.');
	expect(both.rest).toContain('B: 12 cm');
});

test('a route with a gap carries nothing that is known, whatever else is', () => {
	const answer: RouteAnswer = {
		points: [
			{ name: 'Shore', effective_m: 0.3, by: 'bound', check: NEVER },
			{ name: 'Narrows', effective_m: null, by: null, check: NEVER }
		],
		unknown: [1],
		weakest: 0,
		loads: []
	};
	expect(routeSentence(answer, METRIC)).toContain('Not known to carry anything');
	expect(routeSentence({ ...answer, unknown: [] }, METRIC)).toContain(
		'Shore, which counts as 30 cm'
	);
});

test('a plan reads as few runs', () => {
	const planned = holePlan(route([plain('Shore'), plain('Bay', 200)]), false, false);
	if (planned.status !== 'planned') throw new Error(planned.status);
	expect(holeRunWords(planned.plan, METRIC)).toBe(
		'11 holes on 200 m: the first at the start, then every 10 m to 50 m, every 30 m to 200 m.'
	);
	// 10 m are 32.8 ft: rounded down, so that nobody leaves more between.
	expect(holeRunWords(planned.plan, FEET)).toContain('every 32 ft');
});

test('ways and bars are round', () => {
	expect([way(1234.4, METRIC), way(100, FEET), spacing(9.99, METRIC)]).toEqual([
		'1,234 m',
		'328 ft',
		'9 m'
	]);
	expect(roundWay(730, METRIC)).toEqual({ way_m: 500, text: '500 m' });
	expect(roundWay(2300, METRIC)).toEqual({ way_m: 2000, text: '2 km' });
	expect(roundWay(1700, FEET).text).toBe('1 mi');
});

test('names are listed up to three', () => {
	expect(listed(['A'])).toBe('A');
	expect(listed(['A', 'B', 'C'])).toBe('A, B and C');
	expect(listed(['A', 'B', 'C', 'D'])).toBe('A, B, C and 1 more');
});

test('wind is told in the unit of the reader', () => {
	const wind = { code: 'wind' as const, on: '2027-02-03', wind_m_s: 9.6, since: '2027-02-01' };
	expect(againWords(wind, METRIC)).toContain('10 m/s');
	// 9.6 m/s by 1609.344 m to the mile.
	expect(againWords(wind, FEET)).toContain('21 mph');
});

test('whoever reads feet is told how far apart to drill in feet, never farther', () => {
	expect(spacingWords(METRIC)).toEqual({
		shore: '10 m',
		shoreReach: '50 m',
		flow: '15 m',
		flowReach: '50 m',
		open: '30 m'
	});
	expect(spacingWords(FEET)).toEqual({
		shore: '32 ft',
		shoreReach: '165 ft',
		flow: '49 ft',
		flowReach: '165 ft',
		open: '98 ft'
	});
});
