import { expect, test } from 'vitest';
import { age, day, shortDay, span } from '#lib/ui/format/day.ts';
import { counted } from '#lib/ui/format/number.ts';

test('days are written so that no one mixes day and month', () => {
	expect(day('2027-01-02')).toBe('2 Jan 2027');
	expect(shortDay('2026-09-30')).toBe('30 Sep');
});

test('ages are told in the words people use', () => {
	expect(age('2027-01-12', '2027-01-12')).toBe('today');
	expect(age('2027-01-11', '2027-01-12')).toBe('yesterday');
	expect(age('2027-01-09', '2027-01-12')).toBe('3 days ago');
	expect(age('2027-01-14', '2027-01-12')).toBe('2 days ahead');
	expect(span(200)).toBe('7 months');
	expect(span(1096)).toBe('3 years');
	expect(counted(1, 'hole')).toBe('1 hole');
	expect(counted(5, 'hole')).toBe('5 holes');
});
