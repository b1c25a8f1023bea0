import { expect, test } from 'vitest';
import { lookAgain } from '#lib/model/places/look-again.ts';

const days = (...winds: (number | null)[]) =>
	winds.map((wind_m_s, index) => ({ on: `2027-02-0${index + 1}`, wind_m_s }));

// Beaufort's force 5 begins at 8.0 m/s.
test('the windiest day since the check is a reason from 8 m/s on', () => {
	const winds = days(15, 3, 9.5, 8);
	expect(lookAgain('2027-02-02', '2027-02-04', winds, 'lake')).toEqual([
		{ code: 'wind', on: '2027-02-03', wind_m_s: 9.5, since: '2027-02-02' }
	]);
	expect(lookAgain('2027-02-02', '2027-02-02', winds, 'lake')).toEqual([]);
	expect(lookAgain('2027-02-01', '2027-02-04', days(7.9, null, 2), 'lake')).toEqual([]);
});

test('wind that nobody knows is said, and a place nobody has checked has no reasons', () => {
	expect(lookAgain('2027-02-01', '2027-02-03', days(null, null), 'lake')).toEqual([
		{ code: 'windNotKnown', since: '2027-02-01' }
	]);
	expect(lookAgain(null, '2027-02-03', days(20), 'river')).toEqual([]);
});

test.each(['river', 'reservoir'] as const)('the level of a %s may have changed since', (water) => {
	expect(lookAgain('2027-02-03', '2027-02-03', days(1, 1, 1), water)).toEqual([
		{ code: 'waterLevel', water, since: '2027-02-03' }
	]);
});
