import fc from 'fast-check';
import { expect, test } from 'vitest';
import { allowable_kg, effective_m, goldThickness_m } from '#lib/model/bearing.ts';

const thickness = fc.double({ min: 0, max: 2, noNaN: true });
const mass = fc.double({ min: 0, max: 5000, noNaN: true });

test('white ice never counts for more than the same depth of clear ice', () => {
	fc.assert(
		fc.property(thickness, thickness, (clear_m, white_m) => {
			const counted = effective_m({ clear_m, white_m });
			expect(counted).toBeLessThanOrEqual(clear_m + white_m);
			expect(counted).toBeGreaterThanOrEqual(clear_m);
		})
	);
});

test('the thickness asked for a load is the one that allows it', () => {
	fc.assert(
		fc.property(mass, (mass_kg) => {
			expect(allowable_kg(goldThickness_m(mass_kg))).toBeCloseTo(mass_kg, 6);
		})
	);
});

test('thicker ice never allows less', () => {
	fc.assert(
		fc.property(thickness, thickness, (a, b) => {
			expect(allowable_kg(Math.max(a, b))).toBeGreaterThanOrEqual(allowable_kg(Math.min(a, b)));
		})
	);
});

test('15 cm of clear and 10 cm of white ice allow 1400 kg, not the 2188 of 25 clear centimetres', () => {
	expect(allowable_kg(effective_m({ clear_m: 0.15, white_m: 0.1 }))).toBeCloseTo(1400, 6);
	expect(allowable_kg(0.25)).toBeCloseTo(2187.5, 6);
});
