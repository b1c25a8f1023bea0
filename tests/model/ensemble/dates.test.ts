import { expect, test } from 'vitest';
import { addDays } from '#lib/model/calendar.ts';
import { loadDates, type ThicknessChance } from '#lib/model/ensemble/dates.ts';

const FIRST = '2027-01-01';

function days(chances: readonly (number | null)[]): ThicknessChance[] {
	return chances.map((pThickness, index) => ({ on: addDays(FIRST, index), pThickness }));
}

const NEVER = { expectedFrom: null, likelyFrom: null, until: null };

test('expected and likely from the first day of three in a row, until the last day before the fall', () => {
	expect(loadDates(days([0.1, 0.5, 0.6, 0.9, 0.9, 0.95, 0.7, 0.5, 0.4, 0.2]), FIRST)).toEqual({
		expectedFrom: '2027-01-02',
		likelyFrom: '2027-01-04',
		until: '2027-01-08'
	});
});

test('a peak of two days is no date', () => {
	expect(loadDates(days([0.2, 0.8, 0.8, 0.2, 0.2]), FIRST)).toEqual(NEVER);
});

test('a requirement that is met from the first day told is stated with that day', () => {
	expect(loadDates(days([0.95, 0.95, 0.95, 0.3]), FIRST)).toEqual({
		expectedFrom: '2027-01-01',
		likelyFrom: '2027-01-01',
		until: '2027-01-03'
	});
});

test('there is no last day while it is still met on the last one told', () => {
	expect(loadDates(days([0.2, 0.6, 0.7, 0.8]), FIRST).until).toBeNull();
});

test('never met has no dates, nor has nothing told', () => {
	expect(loadDates(days([0.1, 0.2, 0.49, 0.3]), FIRST)).toEqual(NEVER);
	expect(loadDates([], FIRST)).toEqual(NEVER);
});

test('a dip of two days does not end it', () => {
	const dates = loadDates(days([0.6, 0.6, 0.6, 0.2, 0.2, 0.7, 0.7, 0.1, 0.1]), FIRST);
	expect(dates).toMatchObject({ expectedFrom: '2027-01-01', until: '2027-01-07' });
});

test('what is met again after three days under is another stretch, told once the first is over', () => {
	const again = days([0.6, 0.6, 0.6, 0.2, 0.2, 0.2, 0.9, 0.9, 0.9, 0.1, 0.1, 0.1]);
	const before = { expectedFrom: '2027-01-01', likelyFrom: null, until: '2027-01-03' };
	expect(loadDates(again, FIRST)).toEqual(before);
	expect(loadDates(again, '2027-01-03')).toEqual(before);
	const after = { expectedFrom: '2027-01-07', likelyFrom: '2027-01-07', until: '2027-01-09' };
	// Over since yesterday, with the next ahead; in it; and when both are over.
	for (const on of ['2027-01-04', '2027-01-08', '2027-01-12'])
		expect(loadDates(again, on)).toEqual(after);
	expect(loadDates(again.slice(0, 9), '2027-01-07').until).toBeNull();
});

test('a day that is not estimated ends a row', () => {
	expect(loadDates(days([0.6, 0.6, null, 0.6, 0.6, 0.6, 0.1]), FIRST).expectedFrom).toBe(
		'2027-01-04'
	);
});

test('a missing day ends a row', () => {
	const holed = days([0.6, 0.6, 0.6, 0.6, 0.6, 0.1]).filter(({ on }) => on !== '2027-01-03');
	expect(loadDates(holed, FIRST)).toEqual(NEVER);
});

test('days past what is estimated are no fall', () => {
	expect(loadDates(days([0.6, 0.6, 0.6, null, null]), FIRST).until).toBeNull();
	expect(loadDates(days([0.6, 0.6, 0.6, null, 0.2]), FIRST).until).toBe('2027-01-03');
});

test('likely is never before expected', () => {
	for (let seed = 1; seed <= 200; seed++) {
		const chances = Array.from({ length: 30 }, (_, i) => Math.abs(Math.sin(seed * 7.3 + i * seed)));
		const { expectedFrom, likelyFrom, until } = loadDates(days(chances), FIRST);
		if (likelyFrom !== null) expect(expectedFrom !== null && expectedFrom <= likelyFrom).toBe(true);
		if (until !== null) expect(expectedFrom !== null && expectedFrom < until).toBe(true);
	}
});
