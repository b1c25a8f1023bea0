import { expect, test } from 'vitest';
import { grouped } from '#lib/model/shown-number.ts';

test('thousands stand apart as the language itself sets them', () => {
	for (const value of [0, 7, 999, 999.5, 1000, 12_345.4, 123_456, 1_234_567, -1, -1234, -123_456])
		expect(grouped(value)).toBe(Math.round(value).toLocaleString('en-GB'));
	expect(grouped(-0.2)).toBe('0');
});
