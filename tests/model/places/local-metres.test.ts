import fc from 'fast-check';
import { expect, test } from 'vitest';
import { distance_m } from '#lib/model/distance.ts';
import { between, fromLocal, toLocal } from '#lib/model/places/local-metres.ts';

const position = fc.record({
	latitude: fc.double({ min: -75, max: 75, noNaN: true }),
	longitude: fc.double({ min: -180, max: 179.999, noNaN: true })
});
const near = fc.record({
	east_m: fc.double({ min: -5000, max: 5000, noNaN: true }),
	north_m: fc.double({ min: -5000, max: 5000, noNaN: true })
});

test('there and back is the same place, and as far as over the round earth', () => {
	fc.assert(
		fc.property(position, near, (origin, local) => {
			const place = fromLocal(origin, local);
			const back = toLocal(origin, place);
			expect(back.east_m).toBeCloseTo(local.east_m, 3);
			expect(back.north_m).toBeCloseTo(local.north_m, 3);
			const flat_m = Math.hypot(local.east_m, local.north_m);
			expect(Math.abs(distance_m(origin, place) - flat_m)).toBeLessThan(0.005 * flat_m + 0.01);
		})
	);
});

test('over the date line the short way is taken', () => {
	const { east_m } = toLocal(
		{ latitude: 0, longitude: 179.999 },
		{ latitude: 0, longitude: -179.999 }
	);
	expect(east_m).toBeCloseTo(222.39, 1);
	const half = between(
		{ latitude: 0, longitude: 179.999 },
		{ latitude: 0, longitude: -179.999 },
		0.5
	);
	expect(Math.abs(half.longitude)).toBeCloseTo(180, 6);
});
