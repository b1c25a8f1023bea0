import { expect, test } from 'vitest';
import { coordinateSearch } from '../../../src/commands/validate/coordinate-search.ts';

const RANGES = [
	{ name: 'x', low: 0, high: 10 },
	{ name: 'y', low: -1, high: 1 }
];

test('the lowest point of a bowl is found to the last step', () => {
	const found = coordinateSearch(RANGES, ({ x = 0, y = 0 }) => (x - 7.3) ** 2 + 9 * (y + 0.4) ** 2);
	expect(found.x).toBeCloseTo(7.3, 0);
	expect(found.y).toBeCloseTo(-0.4, 1);
});

test('a lowest point outside the range is met at its edge', () => {
	expect(coordinateSearch(RANGES, ({ x = 0 }) => x).x).toBeCloseTo(0);
});

test('where nothing matters the middle of the ranges stays', () => {
	expect(coordinateSearch(RANGES, () => 1)).toEqual({ x: 5, y: 0 });
});
