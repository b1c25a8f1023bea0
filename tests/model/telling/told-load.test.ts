import { expect, test } from 'vitest';
import { addDays } from '#lib/model/calendar.ts';
import { loadNews, type ToldLoad } from '#lib/model/telling/told-load.ts';
import type { LoadFacts } from '#lib/model/telling/facts.ts';

const START = '2027-01-01';

function load(change: Partial<LoadFacts> = {}): LoadFacts {
	return {
		id: 'car',
		name: 'Car',
		status: 'notYet',
		reason: 'It is asked for.',
		expectedFrom: null,
		likelyFrom: null,
		until: null,
		offBy: null,
		...change
	};
}

/** What is told on each of days in a row: `day kind`. */
function story(days: readonly Partial<LoadFacts>[]): string[] {
	let told: ToldLoad | null = null;
	return days.flatMap((change, index) => {
		const today = addDays(START, index);
		const result = loadNews(told, load(change), today);
		told = result.told;
		return result.news.map(({ kind }) => `${today} ${kind}`);
	});
}

const status = (...names: LoadFacts['status'][]) => names.map((each) => ({ status: each }));

test('a status that is found is not told, one that gets worse is told at once', () => {
	expect(story(status('reached', 'reached', 'withheld', 'withheld'))).toEqual([
		'2027-01-03 statusChanged'
	]);
});

test('a better status is told once it has stood on two days', () => {
	expect(
		story(status('notYet', 'expectedNotDrilled', 'expectedNotDrilled', 'expectedNotDrilled'))
	).toEqual(['2027-01-03 statusChanged']);
});

test('a status that swings is never told as better', () => {
	const swing = status('notYet', 'expectedNotDrilled', 'notYet', 'expectedNotDrilled', 'notYet');
	expect(story(swing)).toEqual([]);
});

test('within one day nothing gets better, however often it is looked at', () => {
	const first = loadNews(null, load(), START);
	const second = loadNews(first.told, load({ status: 'reached' }), START);
	const third = loadNews(second.told, load({ status: 'reached' }), START);
	expect([...second.news, ...third.news]).toEqual([]);
});

test('the day that is expected from is told while it lies ahead, and when it moves', () => {
	const from = (...days: number[]) => days.map((day) => ({ expectedFrom: addDays(START, day) }));
	expect(story(from(12, 13, 11, 12, 8, 8))).toEqual([
		'2027-01-01 thresholdExpected',
		'2027-01-05 thresholdExpected'
	]);
	expect(story(from(0, 0, 0))).toEqual([]);
	expect(story(from(2, 2, 2, 2, 2))).toEqual(['2027-01-01 thresholdExpected']);
});

test('a day that is expected no more is told as lost after three days, and not before', () => {
	const none = {};
	const some = { expectedFrom: '2027-01-12' };
	expect(story([some, none, some, none, none, none, none])).toEqual([
		'2027-01-01 thresholdExpected',
		'2027-01-07 thresholdLost'
	]);
});

test('the last day is told from three weeks before it, and only of what is out there', () => {
	const ends = { expectedFrom: '2026-12-20', until: '2027-01-24' };
	expect(story([ends, ends, ends, ends])).toEqual(['2027-01-03 endExpected']);
	const sooner = { ...ends, until: '2027-01-14' };
	expect(story([ends, ends, ends, sooner])).toEqual([
		'2027-01-03 endExpected',
		'2027-01-04 endExpected'
	]);
	const notYet = { expectedFrom: '2027-01-10', until: '2027-01-20' };
	expect(story([notYet])).toEqual(['2027-01-01 thresholdExpected']);
});

test('the cautious end comes before the even one, and one that is due is told once', () => {
	const ends = { expectedFrom: '2026-12-20', until: '2027-03-24', offBy: '2027-01-05' };
	const due = (day: number) => ({ ...ends, offBy: addDays(START, day) });
	expect(story([ends, ends, ends, ends, ends, due(5), due(6), due(7), due(8), due(9)])).toEqual([
		'2027-01-01 endExpected'
	]);
});
