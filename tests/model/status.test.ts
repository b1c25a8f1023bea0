import { expect, test } from 'vitest';
import type { DrilledDay } from '#lib/model/drilled-day.ts';
import { requirement } from '#lib/model/requirement.ts';
import type { SeasonDay } from '#lib/model/season.ts';
import { statusOf, type StatusInput } from '#lib/model/status.ts';
import { warmSpells } from '#lib/model/warm-spell.ts';
import { METRIC_WORDS } from '#lib/model/words.ts';
import { MINIMUMS, column, load, seasonDays, siteDay } from '../support/invented-winter.ts';

const HOLES: DrilledDay = {
	on: '2027-01-11',
	age_d: 0,
	holes: Array.from({ length: 5 }, () => ({
		effective_m: 0.3,
		kind: 'open' as const,
		secondHand: false
	})),
	hasFlooded: false,
	hasThawed: false,
	hadSpell: false,
	gapDays: 0
};

function status(days: Partial<SeasonDay>[], change: Partial<StatusInput> = {}) {
	const season = seasonDays('2027-01-10', days);
	const each = change.load ?? load('on-foot');
	return statusOf({
		load: each,
		requirement: requirement(each, MINIMUMS, 'strict'),
		season: season.map((day) => siteDay(day)),
		asOf: season.at(-1)?.on ?? '2027-01-10',
		warm: warmSpells(season, [], () => true).at(-1) ?? null,
		drilled: [],
		iceOutOn: null,
		words: METRIC_WORDS,
		...change
	});
}

const thick = (clear_m: number): Partial<SeasonDay> => ({ column: column({ clear_m }) });

test('a bound short of the chart is not yet, with what holes would have to show', () => {
	const { status: state, reason } = status([thick(0.19)]);
	expect(state).toBe('notYet');
	expect(reason).toContain('15 cm is asked for; the ice counts as 19 cm, lower bound 14 cm');
	expect(reason).toMatch(/3 holes with 2[0-4] cm of clear ice on average, none under 15 cm/);
});

test('where one day of holes cannot lift the bound so far, more on another day are asked', () => {
	const { reason } = status([thick(0.05)], { load: load('car') });
	expect(reason).toContain(
		'5 holes along the way, none under 40 cm, and more of them on another day'
	);
});

test('a bound that clears it without holes is expected, not drilled, since the day it did', () => {
	const { status: state, reason } = status([thick(0.19), thick(0.3), thick(0.3)]);
	expect(state).toBe('expectedNotDrilled');
	expect(reason).toContain('Expected since 11 Jan, not drilled: no hole has been drilled.');
});

test('holes that support it make it reached', () => {
	const { status: state, reason } = status([thick(0.3), thick(0.3)], { drilled: [HOLES] });
	expect(state).toBe('reached');
	expect(reason).toContain('Chart minimum reached by 5 holes of 11 Jan');
});

test('holes do not make reached what today does not clear', () => {
	expect(status([thick(0.19)], { drilled: [HOLES] }).status).toBe('notYet');
});

test('unknown snow is neither expected nor reached', () => {
	const days = [{ ...thick(0.6), snowKnown: false }];
	expect(status(days, { drilled: [HOLES] }).status).toBe('notYet');
	expect(status(days).reason).toContain('the snow on the ice is not known');
});

test('a thaw withholds what holes support, and still shows the figures', () => {
	const thaw = { ...thick(0.3), aboveFreezing_h: 24, air_degC: 2 };
	const { status: state, reason } = status([thick(0.3), thaw], { drilled: [HOLES] });
	expect(state).toBe('withheld');
	expect(reason).toContain('Stay off: warm spell of 11 Jan');
	expect(reason).toContain('the ice counts as 30 cm');
});

test('ice that the sun has rotted withholds', () => {
	const rotten = { column: column({ clear_m: 0.6, liquidFraction: 0.06 }) };
	expect(status([rotten]).status).toBe('withheld');
	expect(status([{ column: column({ clear_m: 0.6, liquidFraction: 0.04 }) }]).status).toBe(
		'expectedNotDrilled'
	);
});

test('a recorded ice-out withholds', () => {
	expect(status([thick(0.6)], { iceOutOn: '2027-01-10' })).toEqual({
		status: 'withheld',
		reason: 'Ice-out was recorded on 10 Jan.'
	});
});

test('no ice is said plainly', () => {
	expect(status([thick(0)]).reason).toBe('No ice is estimated; 15 cm is asked for.');
});

test('a day past the weather is not yet, and says where the weather ends', () => {
	const { status: state, reason } = status([thick(0.6)], { asOf: '2027-02-01' });
	expect(state).toBe('notYet');
	expect(reason).toContain('nothing is estimated for 1 Feb');
	expect(status([], { asOf: '2027-02-01' }).reason).toContain('no weather since freeze-up');
});

test('what only an engineer can say is said so whatever the ice', () => {
	const each = load('truck-with-shelter');
	const { status: state, reason } = status([thick(1.5)], { load: each });
	expect(state).toBe('askAnEngineer');
	expect(reason).toContain('qualified ice engineer');
});
