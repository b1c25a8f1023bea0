import fc from 'fast-check';
import { expect, test } from 'vitest';
import { lowerBound_m, thinnestOfFive_m } from '#lib/model/lower-bound.ts';

const length = fc.double({ min: 0, max: 1, noNaN: true });

/** Seeded uniform draws (mulberry32), and normal ones of them (Box and Muller). */
function normals(seed: number): () => number {
	let state = seed;
	const uniform = () => {
		state = (state + 0x6d2b79f5) | 0;
		let t = Math.imul(state ^ (state >>> 15), 1 | state);
		t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
		return (((t ^ (t >>> 14)) >>> 0) + 0.5) / 4294967296;
	};
	return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}

function drawnTenth_m(estimate_m: number, site_m: number, spot_m: number, spots: number): number {
	const normal = normals(7);
	const draws = Array.from({ length: 40_000 }, () => {
		const mean_m = estimate_m + site_m * normal();
		return Math.min(...Array.from({ length: spots }, () => mean_m + spot_m * normal()));
	}).toSorted((a, b) => a - b);
	return draws[Math.floor(draws.length / 10)] ?? NaN;
}

const DOUBTS = [
	{ site_m: 0, spot_m: 0.08 },
	{ site_m: 0.08, spot_m: 0 },
	{ site_m: 0.03, spot_m: 0.08 },
	{ site_m: 0.08, spot_m: 0.08 },
	{ site_m: 0.08, spot_m: 0.03 }
];

test.each(DOUBTS)('a tenth of drawn spots are thinner than the bound: %o', (doubt) => {
	const drawn_m = drawnTenth_m(0.6, doubt.site_m, doubt.spot_m, 1);
	expect(Math.abs(lowerBound_m(0.6, doubt) - drawn_m)).toBeLessThan(0.002);
});

test.each(DOUBTS)('the least of five drawn spots agrees with the vehicles bound: %o', (doubt) => {
	const drawn_m = drawnTenth_m(0.6, doubt.site_m, doubt.spot_m, 5);
	const whole_m = Math.hypot(doubt.site_m, doubt.spot_m);
	const error_m = thinnestOfFive_m(0.6, doubt) - drawn_m;
	expect(Math.abs(error_m)).toBeLessThan(0.02 * whole_m + 0.001);
});

test('the lower bound is never above the estimate nor below nothing', () => {
	fc.assert(
		fc.property(length, length, length, (estimate_m, site_m, spot_m) => {
			const bound_m = lowerBound_m(estimate_m, { site_m, spot_m });
			expect(bound_m).toBeLessThanOrEqual(estimate_m);
			expect(bound_m).toBeGreaterThanOrEqual(0);
		})
	);
});

test('the thinnest of five spots is never thicker than one at random', () => {
	fc.assert(
		fc.property(length, length, length, (estimate_m, site_m, spot_m) => {
			const doubt = { site_m, spot_m };
			expect(thinnestOfFive_m(estimate_m, doubt)).toBeLessThanOrEqual(
				lowerBound_m(estimate_m, doubt) + 1e-12
			);
		})
	);
});
