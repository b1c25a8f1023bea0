import { expect, test } from 'vitest';
import { midnightOf } from '#lib/ui/charts/midnight.ts';
import { monthName } from '#lib/ui/charts/month-name.ts';

test('a month is named by its first day, and not where hardly any of it is in the picture', () => {
	expect(monthName(midnightOf('2027-01-01'), '2027-06-11')).toBe('Jan');
	expect(monthName(midnightOf('2027-05-01'), '2027-05-15')).toBe('May');
	expect(monthName(midnightOf('2027-06-01'), '2027-06-11')).toBe('');
});
