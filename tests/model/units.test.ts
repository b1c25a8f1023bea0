import { expect, test } from 'vitest';
import { celsius, fahrenheit, POUND_kg, SHORT_TON_kg } from '#lib/model/units.ts';

test('temperatures go there and back', () => {
	expect(celsius(32)).toBe(0);
	expect(fahrenheit(-40)).toBe(-40);
	expect(celsius(fahrenheit(12.5))).toBeCloseTo(12.5, 12);
});

test('pounds and short tons', () => {
	expect(POUND_kg).toBeCloseTo(0.453592, 6);
	expect(SHORT_TON_kg).toBeCloseTo(907.185, 3);
});
