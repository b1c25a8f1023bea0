import { expect, test } from 'vitest';
import type { Reading } from '#lib/model/reading.ts';
import { FormInput, type FormValues } from '#lib/ui/forms/form-input.ts';
import { readingValues, readReading } from '#lib/ui/forms/reading-input.ts';
import { holesWords } from '#lib/ui/forms/reading-words.ts';

const METRIC = { measure: 'metric', mass: 'kg' } as const;
const IMPERIAL = { measure: 'imperial', mass: 'lb' } as const;
const FACTS = { today: '2027-01-12', units: METRIC, estimate_m: null };
const BASE = { on: '2027-01-10', kind: 'measured' };

function read(values: FormValues, facts: Partial<Parameters<typeof readReading>[1]> = {}) {
	const input = new FormInput({ ...BASE, ...values });
	const reading = readReading(input, { ...FACTS, ...facts });
	return { reading, issues: input.issues };
}

test('several holes come in with their layers, empty rows left out', () => {
	const { reading, issues } = read({
		place: ' narrow bay ',
		'holes.0.total_cm': '31',
		'holes.0.snow_cm': '6',
		'holes.1.total_cm': '',
		'holes.1.clear_cm': ' ',
		'holes.2.clear_cm': '22,5',
		'holes.2.white_cm': '9',
		'holes.2.freeboard_cm': '-2',
		core: 'sound',
		by: '',
		remark: ''
	});
	const empty = { total_m: null, clear_m: null, white_m: null, snow_m: null };
	expect(issues).toEqual([]);
	expect(reading).toEqual({
		on: '2027-01-10',
		place: 'narrow bay',
		kind: 'measured',
		holes: [
			{ ...empty, slush_m: null, freeboard_m: null, total_m: 0.31, snow_m: 0.06 },
			{ ...empty, slush_m: null, clear_m: 0.225, white_m: 0.09, freeboard_m: -0.02 }
		],
		core: 'sound',
		by: null,
		secondHand: false,
		remark: null
	});
});

test('a tick says that somebody else told it', () => {
	expect(read({ 'holes.0.total_cm': '20', secondHand: 'yes' }).reading.secondHand).toBe(true);
	expect(readingValues({ ...STORED, secondHand: true }, METRIC)).toMatchObject({
		secondHand: 'yes'
	});
	expect(readingValues(STORED, METRIC)).toMatchObject({ secondHand: '' });
});

test('inches become metres', () => {
	const { reading } = read({ 'holes.0.total_in': '12', 'holes.0.snow_in': '2.5' });
	expect(reading.holes[0]).toMatchObject({ total_m: 0.3048, snow_m: 0.0635 });
});

test('a day after today, a missing day and a missing hole are each refused at their field', () => {
	expect(read({ on: '2027-01-13', 'holes.0.total_cm': '20' }).issues[0]?.field).toBe('on');
	expect(read({ on: '', 'holes.0.total_cm': '20' }).issues[0]?.field).toBe('on');
	expect(read({ 'holes.0.total_cm': '' }).issues[0]?.field).toBe('holes.0.total_cm');
	expect(read({ kind: 'guessed', 'holes.0.total_cm': '20' }).issues[0]?.field).toBe('kind');
	expect(read({ core: 'green', 'holes.0.total_cm': '20' }).issues[0]?.field).toBe('core');
});

test('open water is a measurement too', () => {
	expect(read({ 'holes.0.total_cm': '0' }).issues).toEqual([]);
});

test('who went through need not have measured', () => {
	const { reading, issues } = read({ kind: 'wentThrough', 'holes.0.total_cm': '' });
	expect(issues).toEqual([]);
	expect(reading).toMatchObject({ kind: 'wentThrough', holes: [] });
});

test('clear ice without white, and the other way round, asks for the other', () => {
	expect(read({ 'holes.0.clear_cm': '20', 'holes.0.white_cm': '' }).issues).toEqual([
		{
			field: 'holes.0.white_cm',
			message: 'Type the white ice too, 0 when there was none, or the whole thickness.'
		}
	]);
	expect(read({ 'holes.0.white_cm': '5', 'holes.0.clear_cm': '' }).issues[0]?.field).toBe(
		'holes.0.clear_cm'
	);
});

test('parts a centimetre off the whole pass, more is asked about as slush', () => {
	const parts = { 'holes.0.clear_cm': '20', 'holes.0.white_cm': '5' };
	expect(read({ ...parts, 'holes.0.total_cm': '26' }).issues).toEqual([]);
	const [question] = read({ ...parts, 'holes.0.total_cm': '30' }).issues;
	expect(question?.message).toContain(
		'Clear and white make 25 cm, the whole says 30 cm. Is the rest slush?'
	);
	expect(question?.keep).toBeDefined();
	expect(
		read({ ...parts, 'holes.0.total_cm': '30', 'keep.holes.0.total_cm': '30' }).issues
	).toEqual([]);
});

test('parts that make more than the whole cannot be kept', () => {
	const [issue] = read({
		'holes.0.clear_cm': '20',
		'holes.0.white_cm': '15',
		'holes.0.total_cm': '30'
	}).issues;
	expect(issue?.message).toContain('Mend one of the three');
	expect(issue?.keep).toBeUndefined();
});

test.each([
	['more than two metres', '250', null],
	['ten times the estimate', '230', 0.22],
	['a tenth of the estimate', '3', 0.4]
])('ice of %s is asked about and kept when confirmed', (_, text, estimate_m) => {
	const values = { 'holes.0.total_cm': text };
	expect(read(values, { estimate_m }).issues).toEqual([
		expect.objectContaining({ field: 'holes.0.total_cm', keep: `It is ${text} cm` })
	]);
	expect(read({ ...values, 'keep.holes.0.total_cm': text }, { estimate_m }).issues).toEqual([]);
});

test('new ice beside an estimate of next to nothing is not a slip', () => {
	expect(read({ 'holes.0.total_cm': '12' }, { estimate_m: 0.002 }).issues).toEqual([]);
});

test('snow over a metre is asked about in the unit it was typed in', () => {
	const [issue] = read(
		{ 'holes.0.total_in': '12', 'holes.0.snow_in': '60' },
		{ units: IMPERIAL }
	).issues;
	expect(issue).toMatchObject({ field: 'holes.0.snow_in', keep: 'It is 60 inches' });
});

const STORED: Reading = {
	id: 'r-1',
	on: '2027-01-05',
	place: 'bay',
	kind: 'measured',
	holes: [
		{ total_m: 0.2337, clear_m: null, white_m: null, snow_m: 0.06, slush_m: 0, freeboard_m: -0.01 }
	],
	core: null,
	by: null,
	secondHand: false,
	remark: 'windy'
};

test('a stored reading goes through the form and back unchanged, in inches too', () => {
	const { id: _, ...same } = STORED;
	for (const units of [METRIC, IMPERIAL]) {
		const { reading, issues } = read(readingValues(STORED, units), { units, stored: STORED });
		expect(issues).toEqual([]);
		expect(reading).toEqual(same);
	}
});

test('holes are told in words', () => {
	expect(holesWords(STORED, METRIC)).toBe('23 cm, no slush, snow 6 cm, water 1 cm over the ice');
	const two = [0.22, 0.25].map(
		(total_m) => ({ ...STORED.holes[0], total_m }) as Reading['holes'][0]
	);
	expect(holesWords({ kind: 'atLeast', holes: two }, METRIC)).toMatch(
		/^2 holes, at least 22 to 25 cm/
	);
	expect(holesWords({ kind: 'wentThrough', holes: [] }, METRIC)).toBe('');
});
