import fc from 'fast-check';
import { expect, test } from 'vitest';
import { spread } from '#lib/ui/charts/spread.ts';

test('labels that have room stay where they want to be', () => {
	expect(spread([10, 50, 90], 20)).toEqual([10, 50, 90]);
});

test('two that collide part equally', () => {
	expect(spread([50, 52], 20)).toEqual([41, 61]);
});

test('the order of the input is kept', () => {
	expect(spread([52, 50], 20)).toEqual([61, 41]);
});

test('none leaves the picture while all fit into it', () => {
	expect(spread([0, 2], 20, 5, 100)).toEqual([5, 25]);
	expect(spread([99, 100], 20, 5, 100)).toEqual([80, 100]);
});

test('no two labels ever touch, and none leaves the picture', () => {
	const places = fc.array(fc.double({ min: -50, max: 400, noNaN: true }), { maxLength: 15 });
	fc.assert(
		fc.property(places, (wanted) => {
			const placed = spread(wanted, 19, 0, 330).toSorted((a, b) => a - b);
			placed.slice(1).forEach((place, index) => {
				expect(place - (placed[index] ?? 0)).toBeGreaterThanOrEqual(19 - 1e-6);
			});
			for (const place of placed) {
				expect(place).toBeGreaterThanOrEqual(-1e-6);
				expect(place).toBeLessThanOrEqual(330 + 1e-6);
			}
		}),
		{ numRuns: 300, seed: 1 }
	);
});
