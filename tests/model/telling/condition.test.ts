import { expect, test } from 'vitest';
import { addDays } from '#lib/model/calendar.ts';
import { conditionNews, type ToldCondition } from '#lib/model/telling/condition.ts';

const START = '2027-01-01';

/** The days on which it is told, for a first day of the condition (or none) on each day in a row. */
function toldOn(froms: readonly (string | null)[]): string[] {
	let told: ToldCondition | null = null;
	return froms.flatMap((from, index) => {
		const today = addDays(START, index);
		const result = conditionNews(told, from, today);
		told = result.told;
		return result.isNews ? [today] : [];
	});
}

test('what stays is told once', () => {
	expect(toldOn(Array.from({ length: 20 }, () => '2027-01-05'))).toEqual([START]);
});

test('a day that swings by one or two is told once', () => {
	const swings = [10, 11, 9, 12, 10, 8, 11].map((day) => addDays(START, day));
	expect(toldOn(swings)).toEqual([START]);
});

test('a day that drifts by one each day is told again when it has moved by three', () => {
	const drifts = Array.from({ length: 7 }, (_, index) => addDays(START, 8 + index));
	expect(toldOn(drifts)).toEqual([START, '2027-01-04', '2027-01-07']);
});

test('what comes and goes each day is told once', () => {
	const flickers = Array.from({ length: 12 }, (_, index) => (index % 2 ? null : '2027-01-03'));
	expect(toldOn(flickers)).toEqual([START]);
});

test('what was gone for three days is told when it comes back', () => {
	const gone = [null, null, null, null];
	expect(toldOn([START, ...gone, '2027-01-06'])).toEqual([START, '2027-01-06']);
});

test('what begins before the day that was told is told, even by a day', () => {
	expect(toldOn(['2027-01-04', '2027-01-03', '2027-01-03'])).toEqual([START, '2027-01-03']);
});

test('what begins on the day that was told is not told a second time', () => {
	const on = '2027-01-03';
	expect(toldOn([on, on, on, on])).toEqual([START]);
});
