import fc from 'fast-check';
import { expect, test } from 'vitest';
import { isCrossed } from '#lib/ui/places/is-crossed.ts';

const BOX = { x: 10, y: 10, width: 20, height: 10 };

test.each([
	['through it', { x: 0, y: 15 }, { x: 50, y: 15 }, true],
	['across a corner', { x: 8, y: 14 }, { x: 14, y: 8 }, true],
	['from within', { x: 20, y: 15 }, { x: 21, y: 15 }, true],
	['past a corner', { x: 4, y: 14 }, { x: 14, y: 4 }, false],
	['short of it', { x: 0, y: 15 }, { x: 9, y: 15 }, false],
	['above it, level', { x: 0, y: 9 }, { x: 50, y: 9 }, false],
	['beside it, upright', { x: 31, y: 0 }, { x: 31, y: 50 }, false]
])('a line %s', (_, from, to, crosses) => {
	expect(isCrossed(BOX, from, to)).toBe(crosses);
	expect(isCrossed(BOX, to, from)).toBe(crosses);
});

test('a line crosses a box where one of its points lies within', () => {
	const point = fc.record({
		x: fc.integer({ min: 0, max: 40 }),
		y: fc.integer({ min: 0, max: 30 })
	});
	fc.assert(
		fc.property(point, point, fc.double({ min: 0, max: 1, noNaN: true }), (from, to, share) => {
			const x = from.x + share * (to.x - from.x);
			const y = from.y + share * (to.y - from.y);
			const isIn = x > 10.001 && x < 29.999 && y > 10.001 && y < 19.999;
			expect(!isIn || isCrossed(BOX, from, to)).toBe(true);
		})
	);
});
