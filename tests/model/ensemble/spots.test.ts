import { expect, test } from 'vitest';
import { effective_m } from '#lib/model/bearing.ts';
import { openMembers } from '#lib/model/ensemble/members.ts';
import { seededRandom } from '#lib/model/ensemble/random.ts';
import { drawSpots, drill, emptyHoles } from '#lib/model/ensemble/spots.ts';
import { correlation, mean, spread } from '../../support/invented-ensemble.ts';

const COUNT = 20_000;

function drilled(clear_m: number, white_m: number, snow_m = 0.1) {
	const members = openMembers(COUNT);
	members.clear_m.fill(clear_m);
	members.white_m.fill(white_m);
	members.snow_m.fill(snow_m);
	members.slush_m.fill(0.03);
	const holes = emptyHoles(COUNT);
	drill(members, drawSpots(COUNT, seededRandom(5)), holes);
	return holes;
}

test('holes scatter about the site as a reading of one hole is said to', () => {
	const { total_m } = drilled(0.3, 0.1);
	expect(mean(total_m)).toBeCloseTo(0.4, 4);
	// √((0.07·40)² + (0.06·40)² + 1²) by hand
	expect(spread(total_m)).toBeCloseTo(0.0382, 3);
});

test('the thinnest of five spots lies 1.163 standard deviations below the mean', () => {
	// Expected least of five standard normals: Harter, Biometrika 48 (1961) 151-165 [M-hi].
	const { thinnest_m } = drilled(0.4, 0);
	const spot_m = 0.4 * Math.hypot(0.07, 0.06);
	expect((0.4 - mean(thinnest_m)) / spot_m).toBeCloseTo(1.163, 1);
});

test('layers of a hole are thicker or thinner together, and white ice counts half as everywhere', () => {
	const { clear_m, white_m, total_m, effective_m: sound_m } = drilled(0.3, 0.1);
	expect(correlation(clear_m, white_m)).toBeCloseTo(1, 9);
	for (const i of [0, 1, 2, 3, 4]) {
		const layers = { clear_m: clear_m[i] ?? NaN, white_m: white_m[i] ?? NaN };
		expect(total_m[i]).toBeCloseTo(layers.clear_m + layers.white_m, 12);
		expect(sound_m[i]).toBeCloseTo(effective_m(layers), 12);
	}
});

test('snow drifts on its own, and never below nothing', () => {
	const { snow_m, total_m } = drilled(0.3, 0.1);
	expect(Math.abs(correlation(snow_m, total_m))).toBeLessThan(0.03);
	expect(Math.min(...snow_m)).toBeGreaterThanOrEqual(0);
	expect(mean(snow_m)).toBeCloseTo(0.1, 2);
});

test('holes in open water show nothing', () => {
	const { total_m, thinnest_m, effective_m: sound_m } = drilled(0, 0, 0);
	for (const values of [total_m, thinnest_m, sound_m])
		expect(values.every((value) => value === 0)).toBe(true);
});
