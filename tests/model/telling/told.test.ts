import { expect, test } from 'vitest';
import { addDays } from '#lib/model/calendar.ts';
import type { TellingFacts } from '#lib/model/telling/facts.ts';
import { newsOf, type Told } from '#lib/model/telling/told.ts';
import { loadFacts, tellingFacts } from '../../support/telling-facts.ts';

/** Kinds of what is told on days in a row from 5 January, each stored and read back. */
function story(days: readonly Partial<TellingFacts>[]): string[][] {
	let told: Told | null = null;
	return days.map((change, index) => {
		const today = addDays('2027-01-05', index);
		const result = newsOf(told, tellingFacts({ today, asOf: today, ...change }));
		told = JSON.parse(JSON.stringify(result.told)) as Told;
		return result.news.map(({ kind }) => kind);
	});
}

const thaw = { thaw: { from: '2027-01-09', chance: 0.6 } };
const spell = { spell: { since: '2027-01-09', text: 'Stay off.' } };

test('on a quiet day nothing is told', () => {
	expect(story([{}, {}, {}])).toEqual([[], [], []]);
});

test('a thaw that was told ahead is not told again when it has come', () => {
	expect(story([thaw, thaw, {}, thaw, spell, spell])).toEqual([['thawAhead'], [], [], [], [], []]);
});

test('a thaw that nobody foretold is told when it is there', () => {
	expect(story([{}, {}, {}, {}, spell, spell])).toEqual([[], [], [], [], ['thawAhead'], []]);
});

test('a reading is overdue from the day after it was due, once until the next', () => {
	const due = { readingDueOn: '2027-01-06' };
	expect(story([due, due, due, due])).toEqual([[], [], ['readingOverdue'], []]);
	const next = { readingDueOn: '2027-01-08', lastHoleOn: '2027-01-07' };
	expect(story([due, due, due, next, next, next, next])).toEqual([
		[],
		[],
		['readingOverdue'],
		[],
		// Within three days it is still the same: whoever drills every other day is left in peace.
		[],
		[],
		[]
	]);
	const week = Array.from({ length: 5 }, () => ({ readingDueOn: '2027-01-12' }));
	expect(story([due, due, due, ...week, ...week]).flat()).toEqual([
		'readingOverdue',
		'readingOverdue'
	]);
});

test('stale weather is told once while it lasts', () => {
	const stale = { stale: { since: '2027-01-03', age_h: 50 } };
	expect(story([stale, stale, stale, {}, {}])).toEqual([['weatherStale'], [], [], [], []]);
});

test('asked twice with the same facts, the second time tells nothing', () => {
	const facts = tellingFacts({
		...thaw,
		loads: [loadFacts()],
		flood: { from: '2027-01-07', floodsWith_m: 0.03 },
		stale: { since: '2027-01-02', age_h: 70 },
		readingDueOn: '2027-01-04'
	});
	const first = newsOf(null, facts);
	expect(first.news.map(({ kind }) => kind)).toEqual([
		'thawAhead',
		'floodAhead',
		'weatherStale',
		'readingOverdue',
		'thresholdExpected'
	]);
	const second = newsOf(first.told, facts);
	expect(second.news).toEqual([]);
	expect(second.told).toEqual(first.told);
});

test('of another winter nothing has been told', () => {
	const { told } = newsOf(null, tellingFacts(thaw));
	const later = tellingFacts({
		winter: '2027-28',
		today: '2028-01-05',
		thaw: { from: '2028-01-09', chance: 1 }
	});
	expect(newsOf(told, later).news).toHaveLength(1);
});

test('a load that is not estimated for a while is not told as new when it is again', () => {
	const car = { loads: [loadFacts()] };
	expect(story([car, { loads: [] }, { loads: [] }, car]).flat()).toEqual(['thresholdExpected']);
});
