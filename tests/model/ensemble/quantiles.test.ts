import fc from 'fast-check';
import { expect, test } from 'vitest';
import { quantileOfSorted, quantilesOf, shareAtLeast } from '#lib/model/ensemble/quantiles.ts';

const values = fc.array(fc.double({ min: -5, max: 5, noNaN: true }), {
	minLength: 1,
	maxLength: 60
});
const share = fc.double({ min: 0, max: 1, noNaN: true });

/** Inverse of the piecewise linear distribution through (i/(n-1), x_i), by walking along it. */
function walked(of: readonly number[], p: number): number {
	const sorted = of.toSorted((a, b) => a - b);
	for (let i = 1; i < sorted.length; i++) {
		const [from, to] = [(i - 1) / (sorted.length - 1), i / (sorted.length - 1)];
		const [low = 0, high = 0] = [sorted[i - 1], sorted[i]];
		if (p <= to) return high * ((p - from) / (to - from)) + low * ((to - p) / (to - from));
	}
	return sorted.at(-1) ?? NaN;
}

test('quantiles are those of the line through the order statistics', () => {
	fc.assert(
		fc.property(values, fc.array(share, { maxLength: 5 }), (of, shares) => {
			const found = quantilesOf(Float64Array.from(of), shares);
			shares.forEach((p, i) => expect(found[i]).toBeCloseTo(walked(of, p), 9));
		})
	);
});

test('worked by hand: type 7 of 1, 2, 4, 8 and 16', () => {
	const of = Float64Array.of(16, 2, 8, 1, 4);
	expect(quantilesOf(of, [0, 0.1, 0.5, 0.9, 1])).toEqual([1, 1.4, 4, 12.8, 16]);
	expect([...of]).toEqual([16, 2, 8, 1, 4]);
});

test('nothing has no quantile, and a share outside 0 to 1 is refused', () => {
	expect(quantilesOf(new Float64Array(), [0.5])).toEqual([null]);
	expect(() => quantileOfSorted(Float64Array.of(1), 1.1)).toThrow('between 0 and 1, got 1.1');
	expect(() => quantileOfSorted(Float64Array.of(1), NaN)).toThrow(RangeError);
});

test('the share at or above a limit is what counting finds', () => {
	fc.assert(
		fc.property(values, fc.nat(59), (of, at) => {
			const limit = of[at % of.length] ?? 0;
			const count = of.filter((each) => each >= limit).length;
			expect(shareAtLeast(Float64Array.from(of).toSorted(), limit)).toBe(count / of.length);
		})
	);
	expect(shareAtLeast(Float64Array.of(1, 2, 2, 3), 2.5)).toBe(0.25);
	expect(shareAtLeast(new Float64Array(), 0)).toBeNull();
});
