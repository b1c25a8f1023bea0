import { expect, test } from 'vitest';
import { assimilate } from '#lib/model/ensemble/kalman.ts';
import { quantileOfSorted } from '#lib/model/ensemble/quantiles.ts';
import { normalDraws, seededRandom } from '#lib/model/ensemble/random.ts';
import {
	holeScatter_m,
	placeScatter_m,
	spotFraction,
	TAPE_m
} from '#lib/model/ensemble/scatter.ts';
import { holesToShow_m } from '#lib/model/hole-to-show.ts';
import { load, seasonDay, siteDay } from '../support/invented-winter.ts';

const FOOT = load('on-foot');
const SLED = load('snowmobile');
const today = (mean_m: number, sd_m: number) =>
	siteDay(seasonDay(), {
		site: { mean_m, sd_m },
		bound: {
			spot_m: mean_m - 1.3 * sd_m,
			fiveSpots_m: mean_m - 2 * sd_m,
			total_m: mean_m - 1.3 * sd_m
		}
	});

/** The bound of one spot after such holes, by the ensemble's own update on many drawn sites. */
function drawnBound_m(measured_m: number, mean_m: number, sd_m: number, holes: number): number {
	const random = seededRandom(5);
	const count = 20_000;
	const sites = normalDraws(count, random).map((z) => mean_m + sd_m * z);
	const spots = (of: Float64Array) => {
		const ice = normalDraws(count, seededRandom(6));
		const tape = normalDraws(count, seededRandom(7));
		const shown = of.map(
			(h, i) => h * (1 + spotFraction(h) * (ice[i] ?? 0)) + TAPE_m * (tape[i] ?? 0)
		);
		return quantileOfSorted(shown.toSorted(), 0.1) ?? NaN;
	};
	const before_m = spots(sites);
	const hole_m = Math.hypot(holeScatter_m(mean_m), TAPE_m) / Math.sqrt(holes);
	const sd = Math.hypot(placeScatter_m(mean_m), hole_m);
	const measured = { predicted: sites.slice(), value: measured_m, sd };
	assimilate(measured, [{ values: sites, gain: 1 }], normalDraws(count, random));
	const after_m = spots(sites);
	return after_m - Math.max(0, after_m - before_m) / holes;
}

test('holes of the thickness it names put the bound on the requirement', () => {
	const [mean_m, sd_m] = [0.18, 0.04];
	const shown_m = holesToShow_m(0.15, today(mean_m, sd_m), FOOT) ?? NaN;
	expect(drawnBound_m(shown_m, mean_m, sd_m, 3)).toBeCloseTo(0.15, 2);
	expect(drawnBound_m(shown_m - 0.02, mean_m, sd_m, 3)).toBeLessThan(0.15);
});

test('a site that is expected to be thicker has less to show', () => {
	const thin_m = holesToShow_m(0.15, today(0.15, 0.04), FOOT) ?? NaN;
	const thick_m = holesToShow_m(0.15, today(0.2, 0.04), FOOT) ?? NaN;
	expect(thick_m).toBeLessThan(thin_m);
	expect(thick_m).toBeGreaterThanOrEqual(0.15);
});

test('vehicles ask more of the holes than people on foot', () => {
	const day = today(0.28, 0.04);
	expect(holesToShow_m(0.25, day, SLED)).toBeGreaterThan(holesToShow_m(0.25, day, FOOT) ?? NaN);
});

test('one day of holes does not lift an estimate that is far below', () => {
	expect(holesToShow_m(0.4, today(0.1, 0.02), SLED)).toBeNull();
});
