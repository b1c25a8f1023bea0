import { expect, test } from 'vitest';
import type { StripLoad } from '#lib/ui/charts/strip-data.ts';
import { inTen, loadDates, warmSpells } from '#lib/ui/load-dates.ts';

const METRIC = { measure: 'metric', mass: 'kg' } as const;
const IMPERIAL = { measure: 'imperial', mass: 'lb' } as const;
/** Twenty days. */
const SPAN = {
	from: '2027-01-01',
	to: '2027-01-20',
	asOf: '2027-01-03',
	snowKnown: true,
	isOpen: false
};

function load(changes: Partial<StripLoad> = {}): StripLoad {
	return {
		id: 'snowmobile',
		name: 'Snowmobile',
		required_m: 0.25,
		dayRule: null,
		expectedFrom: '2027-01-06',
		likelyFrom: '2027-01-14',
		until: '2027-01-18',
		met_percent: Array.from({ length: 20 }, (_, index) => (index < 5 ? 1 : 70)),
		thaw_percent: Array.from({ length: 20 }, () => 0),
		...changes
	};
}

function said(changes: Partial<StripLoad> = {}, span: Partial<typeof SPAN> = {}): string {
	return loadDates(load(changes), { ...SPAN, ...span }, METRIC);
}

test('a load is told what it asks and from when to when', () => {
	expect(said()).toBe('asks 25 cm. Expected from 6 Jan, likely from 14 Jan, until 18 Jan.');
	expect(loadDates(load(), SPAN, IMPERIAL)).toContain('asks 10 in.');
});

test('what has begun is said to be since, with the chance on the day', () => {
	expect(said({}, { asOf: '2027-01-10' })).toBe(
		'asks 25 cm. Expected since 6 Jan, likely from 14 Jan, until 18 Jan. Chance on 10 Jan: 7 in 10.'
	);
});

test('what never gets likely says so', () => {
	expect(said({ likelyFrom: null })).toContain('Expected from 6 Jan, on no day likely (9 in 10)');
});

test('what lasts beyond the last day says so', () => {
	const lasts = 'likely from 14 Jan, and still so on 20 Jan, the last day told.';
	expect(said({ until: null })).toContain(lasts);
	expect(said({ until: '2027-01-20' })).toContain(lasts);
});

test('without a record of the snow no date is named', () => {
	const none = { expectedFrom: null, likelyFrom: null, until: null };
	expect(said(none, { snowKnown: false })).toBe(
		'asks 25 cm. No dates are named while the snow on the ice is not known.'
	);
});

test('what is over says so', () => {
	expect(said({ until: '2027-01-08' }, { asOf: '2027-01-19' })).toContain(
		'Was expected from 6 Jan to 8 Jan, and is past.'
	);
});

test('what is not expected tells its best chance, if any', () => {
	const none = { expectedFrom: null, likelyFrom: null, until: null };
	const met_percent = Array.from({ length: 20 }, (_, index) => (index === 11 ? 34 : 2));
	expect(said({ ...none, met_percent })).toBe(
		'asks 25 cm. Not expected by 20 Jan: at best a chance of 3 in 10, on 12 Jan.'
	);
	expect(said({ ...none, met_percent: met_percent.map(() => 2) })).toContain(
		'Not expected by 20 Jan.'
	);
});

test('a best chance that is behind is no chance', () => {
	const met_percent = Array.from({ length: 20 }, (_, index) => (index < 2 ? 40 : 0));
	const none = { expectedFrom: null, likelyFrom: null, until: null };
	expect(said({ ...none, met_percent })).toContain('Not expected by 20 Jan.');
});

function warmOn(...days: number[]): number[] {
	return Array.from({ length: 20 }, (_, index) => (days.includes(index + 1) ? 60 : 10));
}

test('a warm spell leaves the dates as they are', () => {
	expect(said({ thaw_percent: warmOn(8, 9) })).toBe(said());
});

test('warm spells from the day asked for on are said once for all loads', () => {
	const spells = (...days: number[]) =>
		warmSpells({ ...SPAN, borders: [], loads: [load(), load({ thaw_percent: warmOn(...days) })] });
	expect(spells(8)).toContain('a warm spell closes the ice to every load on 8 Jan, whatever');
	expect(spells(3, 4, 17, 18, 19, 20)).toContain(
		'from 3 Jan to 4 Jan and from 17 Jan on, whatever'
	);
	expect(spells(6, 9, 10, 12)).toContain('on 6 Jan, from 9 Jan to 10 Jan and on 12 Jan');
	expect(spells(1, 2)).toBeNull();
	expect(warmSpells({ ...SPAN, borders: [], loads: [] })).toBeNull();
	const open = { ...SPAN, isOpen: true, borders: [], loads: [load({ thaw_percent: warmOn(8) })] };
	expect(warmSpells(open)).toBeNull();
});

test('a requirement raised for the day is told from that of the dates', () => {
	expect(said({ dayRule: 'warmSpell', required_m: 0.5 })).toContain(
		'asks 50 cm now, in the warm spell; the dates are for what it asks otherwise.'
	);
	expect(said({ dayRule: 'coldSnap' })).toContain('after the fall in temperature');
	// The chance would be that of what it asks otherwise.
	expect(said({ dayRule: 'warmSpell' }, { asOf: '2027-01-10' })).not.toContain('Chance');
});

test('a load for an engineer and a winter without estimates make no dates', () => {
	expect(said({ required_m: null })).toBe('the charts end here, only an ice engineer can say.');
	expect(said({ met_percent: [null, null] })).toBe('asks 25 cm. No dates are estimated.');
});

test('chances are said in tenths, never as certain', () => {
	expect([3, 10, 72, 94, 95, 100].map(inTen)).toEqual([
		'under 1 in 10',
		'1 in 10',
		'7 in 10',
		'9 in 10',
		'over 9 in 10',
		'over 9 in 10'
	]);
});
