import { expect, test } from 'vitest';
import { distance_m } from '../../src/lib/model/distance.ts';

test('a quarter of the equator and of a meridian are a quarter of the circumference', () => {
	const quarter_m = (2 * Math.PI * 6_371_000) / 4;
	const origin = { latitude: 0, longitude: 0 };
	expect(distance_m(origin, { latitude: 0, longitude: 90 })).toBeCloseTo(quarter_m, 3);
	expect(distance_m(origin, { latitude: 90, longitude: 17 })).toBeCloseTo(quarter_m, 3);
});

test('one minute of latitude is about a nautical mile, which it was made to be', () => {
	const from = { latitude: 60, longitude: 25 };
	expect(distance_m(from, { latitude: 60 + 1 / 60, longitude: 25 })).toBeCloseTo(1853, 0);
	expect(distance_m(from, from)).toBe(0);
});

test('the date line is no distance', () => {
	const west = { latitude: 0, longitude: -179.95 };
	expect(distance_m({ latitude: 0, longitude: 179.95 }, west)).toBeCloseTo(11_120, -1);
});
