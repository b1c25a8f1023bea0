import { expect, test } from 'vitest';
import { hasMoved } from '#lib/model/telling/moved.ts';

test.each([
	['a day by one', '2027-01-12', '2027-01-13', false],
	['a day by two', '2027-01-12', '2027-01-14', false],
	['a day by three', '2027-01-12', '2027-01-15', true],
	['a day sooner by three', '2027-01-12', '2027-01-09', true],
	// 49 days off: a fifth of them is ten.
	['a far day by nine', '2027-02-19', '2027-02-10', false],
	['a far day by ten', '2027-02-19', '2027-02-09', true],
	['a far day that comes near', '2027-02-19', '2027-01-05', true],
	['a near day that goes far', '2027-01-05', '2027-02-19', true]
])('on 1 January %s is told anew: %s to %s, %s', (_, told, now, isTold) => {
	expect(hasMoved(told, now, '2027-01-01')).toBe(isTold);
});
