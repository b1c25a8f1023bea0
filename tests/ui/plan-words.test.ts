import { expect, test } from 'vitest';
import { planSentence, planWords } from '#lib/ui/plan-words.ts';
import type { IfAnswer } from '#lib/ui/what-if/answer.ts';

const UNITS = { measure: 'metric', mass: 'kg' } as const;

type Dates = [expectedFrom: string | null, likelyFrom: string | null, until: string | null];

function answer([expectedFrom, likelyFrom, until]: Dates, snowKnown = true): IfAnswer {
	const load = { id: 'truck', name: 'Truck', required_m: 0.4, expectedFrom, likelyFrom, until };
	return { ahead: null, peak: null, snowKnown, loads: [load] };
}

const NONE: Dates = [null, null, null];
const LATE: Dates = ['2027-02-10', '2027-02-17', '2027-03-25'];
const SOON: Dates = ['2027-01-29', '2027-02-03', '2027-03-20'];

test.each([
	[
		LATE,
		SOON,
		'Truck: likely from 3 Feb instead of 17 Feb, 14 days sooner; it ends on 20 Mar instead of 25 Mar.'
	],
	[
		SOON,
		LATE,
		'Truck: likely from 17 Feb instead of 3 Feb, 14 days later; it ends on 25 Mar instead of 20 Mar.'
	],
	[LATE, LATE, 'Truck: likely from 17 Feb, cleared or not.'],
	[NONE, SOON, 'Truck: likely from 3 Feb if it is cleared, and on no day as it is.'],
	[NONE, NONE, 'Truck: on no day expected, cleared or not.'],
	[
		['2027-02-10', null, null],
		['2027-02-08', null, null],
		'Truck: expected from 8 Feb instead of 10 Feb, 2 days sooner.'
	]
] as [Dates, Dates, string][])('%j beside %j', (asIs, cleared, expected) => {
	expect(planSentence(answer(asIs), answer(cleared), 'truck')).toBe(expected);
});

test('no dates are named while the snow is not known, and none of a load that is not there', () => {
	expect(planSentence(answer(LATE, false), answer(SOON, false), 'truck')).toContain('not known');
	expect(planSentence(answer(LATE), answer(SOON), 'tank')).toBeNull();
});

test('a plan says when, how deep, and whether again', () => {
	const plan = { from: '2027-01-16', left_m: 0, afterSnow_m: 0.05 };
	expect(planWords(plan, UNITS)).toBe(
		'Cleared on 16 Jan 2027 down to 0 cm of snow, and again each morning that finds more than 5 cm of new snow on it.'
	);
	expect(planWords({ ...plan, afterSnow_m: null }, UNITS)).toMatch(/and not again\.$/);
});
