import { expect, test } from 'vitest';
import { elevationShift_K } from '../../src/lib/model/lapse-rate.ts';

test('the standard atmosphere’s own figures come out: 15 °C at sea level, −56.5 °C at 11 km', () => {
	// [ICAO1993]
	expect(15 + elevationShift_K(0, 11_000)).toBeCloseTo(-56.5, 10);
});

test.each([
	[1000, 0, 6.5],
	[0, 1000, -6.5],
	[340, 140, 1.3],
	[120, 120, 0]
])('from %d m to %d m the air is %d K warmer', (from_m, to_m, expected_K) => {
	expect(elevationShift_K(from_m, to_m)).toBeCloseTo(expected_K, 10);
});
