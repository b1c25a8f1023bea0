import { expect, test } from 'vitest';
import { distance, depthOfWater } from '#lib/ui/format/distance.ts';
import { fineLength } from '#lib/ui/format/fine-length.ts';
import { speed } from '#lib/ui/format/speed.ts';
import { afloatSentences } from '#lib/ui/going-on/afloat-words.ts';
import { askedRows, countsAs, shortOf } from '#lib/ui/going-on/arithmetic.ts';
import { shiftWords } from '#lib/ui/going-on/change-words.ts';
import { changesSentence } from '#lib/ui/going-on/changes-sentence.ts';
import type { Units } from '#lib/ui/units-setting.ts';

const METRIC: Units = { measure: 'metric', mass: 'kg' };
const IMPERIAL: Units = { measure: 'imperial', mass: 'lb' };

test('distances to keep are rounded up, speeds to stay under down', () => {
	expect([distance(30.0001, METRIC), distance(30, METRIC)]).toEqual(['31 m', '30 m']);
	expect([distance(15, IMPERIAL), distance(40, IMPERIAL)]).toEqual(['50 ft', '135 ft']);
	expect([speed(25 / 3.6, METRIC), speed(6.94, METRIC)]).toEqual(['25 km/h', '24 km/h']);
	expect(speed(25 / 3.6, IMPERIAL)).toBe('15 mph');
	expect([depthOfWater(6.5, METRIC), depthOfWater(2, IMPERIAL)]).toEqual(['6.5 m', '7 ft']);
});

test('freeboard is rounded down and sag up, to a tenth', () => {
	expect(fineLength(0.0064, 'up', METRIC)).toBe('0.7 cm');
	expect(fineLength(0.0064, 'down', METRIC)).toBe('0.6 cm');
	expect(fineLength(0.03, 'down', METRIC)).toBe('3 cm');
	expect(fineLength(-0.011, 'down', METRIC)).toBe('−1.1 cm');
	expect(fineLength(0.0064, 'up', IMPERIAL)).toBe('0.3 in');
});

test('the sum is that of the figures that are read', () => {
	const ice = { clear_m: 0.129, white_m: 0.069, bound_m: 0.1, isVehicle: false };
	expect(countsAs(ice, METRIC)).toBe('12 cm clear + half of 6 cm white = 15 cm, each rounded down');
	expect(countsAs({ ...ice, white_m: 0 }, METRIC)).toBe('12 cm, all of it clear');
});

test('what is lacking is rounded up, what is left over down', () => {
	expect(shortOf(0.3888, 0.4, METRIC)).toBe('2 cm short of that.');
	expect(shortOf(0.3888, 0.25, METRIC)).toBe('13 cm more than that.');
	expect(shortOf(null, 0.25, METRIC)).toBe('');
});

test('one of strict, common, formula and freeboard decides', () => {
	const parts = { strict_m: 0.3, common_m: 0.2, gold_m: 0.3207, afloat_m: 0.4298 };
	const rows = (decides: 'chart' | 'gold' | 'afloat', set: 'strict' | 'common' = 'strict') =>
		askedRows({ parts: { ...parts, decides }, counted_kg: 900, parked_h: 48 }, set, METRIC);
	expect(rows('afloat').map(({ who, asks }) => `${who}: ${asks}`)).toEqual([
		'Strict charts: 30 cm',
		'Common charts: 20 cm',
		'Gold’s formula, 900 kg: 33 cm',
		'To stay above the water for 48 hours: 43 cm'
	]);
	const decided = (all: ReturnType<typeof rows>) =>
		all.filter((row) => row.decides).map((r) => r.id);
	expect(decided(rows('afloat'))).toEqual(['afloat']);
	expect(decided(rows('gold'))).toEqual(['gold']);
	expect(decided(rows('chart'))).toEqual(['strict']);
	expect(decided(rows('chart', 'common'))).toEqual(['common']);
});

test('how the ice floats is told with the time that it lasts, rounded down', () => {
	const afloat = { freeboard_m: 0.029, sagAtOnce_m: 0.0019, sag_m: 0.0269, lasts_h: 54.6 };
	const of = (change: object, parked_h = 48) =>
		afloatSentences({ afloat: { ...afloat, ...change }, parked_h, isVehicle: true }, METRIC).join(
			' '
		);
	expect(of({})).toContain('floats 2.9 cm above');
	expect(of({})).toContain('0.2 cm at once and 2.7 cm when it has stood for 48 hours');
	expect(of({})).toContain('about 2 days');
	expect(of({ lasts_h: 5.9 })).toContain('about 5 hours');
	expect(of({ lasts_h: 0.2 })).toContain('under water within the hour');
	expect(of({ freeboard_m: -0.01, lasts_h: 0 })).toContain('water comes up');
	expect(of({}, 0)).toContain('Should it stop');
});

test('nothing is told of people who keep moving, and without ice that there is none', () => {
	expect(afloatSentences({ afloat: null, parked_h: 0, isVehicle: false }, METRIC)).toEqual([]);
	expect(afloatSentences({ afloat: null, parked_h: 0, isVehicle: true }, METRIC)[0]).toContain(
		'no ice'
	);
});

const ASOF = '2027-02-10';
const dates = (
	expectedFrom: string | null,
	likelyFrom: string | null,
	until: string | null = null
) => ({
	expectedFrom,
	likelyFrom,
	until
});

test.each([
	[dates('2027-02-20', null), dates('2027-02-12', null), 'expected 8 days sooner'],
	[dates('2027-02-20', null), dates('2027-02-21', null), 'the same'],
	[dates('2027-02-20', null), dates(null, null), 'no longer expected'],
	[dates(null, null), dates('2027-03-01', null), 'expected from 1 Mar'],
	[dates('2027-02-01', '2027-02-20'), dates('2027-02-01', '2027-02-26'), 'likely 6 days later'],
	[
		dates('2027-02-01', '2027-02-05', '2027-04-01'),
		dates('2027-02-01', '2027-02-05', '2027-03-20'),
		'ends 12 days sooner'
	],
	[
		dates('2027-02-20', null, '2027-04-01'),
		dates('2027-02-15', null, '2027-04-04'),
		'expected 5 days sooner, ends 3 days later'
	]
])('%j beside %j is "%s"', (asIs, other, words) => {
	expect(shiftWords(asIs, other, ASOF)).toBe(words);
});

test('what moves one load is said in a sentence', () => {
	const asIs = [{ id: 'car', ...dates('2027-02-20', null) }];
	const colder = [{ id: 'car', ...dates('2027-02-16', null) }];
	const changes = { colder_K: 5, asIs, tried: [{ id: 'coldWeek' as const, loads: colder }] };
	expect(changesSentence(changes, { loadId: 'car', asOf: ASOF }, METRIC)).toBe(
		'What would move that: with a week 5 °C colder, expected 4 days sooner.'
	);
	expect(changesSentence(changes, { loadId: 'sled', asOf: ASOF }, METRIC)).toBeNull();
});
