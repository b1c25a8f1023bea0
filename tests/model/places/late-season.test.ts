import { expect, test } from 'vitest';
import { isLate } from '#lib/model/places/late-season.ts';

const GROWING = { total_m: [0.1, 0.2, 0.3], isWarm: false };

test.each([
	['deep winter at 60° north', 60, '2027-01-10', false],
	['a high sun in April at 60° north', 60, '2027-04-10', true],
	['autumn with as high a sun, sinking', 60, '2026-09-20', false],
	['October at 45° south, sun rising', -45, '2027-10-10', true]
])('%s', (_, latitude, asOf, expected) => {
	expect(isLate({ latitude, asOf, ...GROWING })).toBe(expected);
});

test('a thaw, or ice thinner than it has been, is late in any month', () => {
	const winter = { latitude: 60, asOf: '2027-01-10' };
	expect(isLate({ ...winter, ...GROWING, isWarm: true })).toBe(true);
	expect(isLate({ ...winter, isWarm: false, total_m: [0.3, 0.26] })).toBe(true);
	expect(isLate({ ...winter, isWarm: false, total_m: [0.3, 0.29] })).toBe(false);
});
