import { expect, test } from 'vitest';
import { rowDates } from '../../../src/routes/lakes/[lake]/row-dates.ts';

const ALL = {
	expectedFrom: '2027-01-06',
	likelyFrom: '2027-01-17',
	until: '2027-03-02',
	status: 'expectedNotDrilled' as const
};
const NONE = { ...ALL, expectedFrom: null, likelyFrom: null, until: null };

test('a row names the days that are estimated, and nothing else', () => {
	expect(rowDates(NONE, '2027-01-01')).toBeNull();
	expect(rowDates({ ...NONE, expectedFrom: '2027-01-06' }, '2027-01-01')).toBe(
		'expected from 6 Jan'
	);
	expect(rowDates(ALL, '2027-01-01')).toBe('expected from 6 Jan, likely from 17 Jan, until 2 Mar');
});

test('what has begun is since its day, what is over was', () => {
	expect(rowDates(ALL, '2027-01-10')).toBe('expected since 6 Jan, likely from 17 Jan, until 2 Mar');
	expect(rowDates(ALL, '2027-03-10')).toBe('was expected from 6 Jan to 2 Mar');
});

test('beside "not yet" nothing is called expected already', () => {
	const row = { ...ALL, status: 'notYet' as const };
	expect(rowDates(row, '2027-01-01')).toBe(rowDates(ALL, '2027-01-01'));
	expect(rowDates(row, '2027-01-10')).toBe(
		'as likely as not since 6 Jan, likely from 17 Jan, until 2 Mar'
	);
});

test('beside "stay off" no day is told until which it would be thick enough', () => {
	const row = { ...ALL, status: 'withheld' as const };
	expect(rowDates(row, '2027-01-10')).toBeNull();
	expect(rowDates(row, '2027-01-01')).toBe(rowDates(ALL, '2027-01-01'));
});
