import { expect, test } from 'vitest';
import { CERTAIN, doubtOf } from '#lib/model/doubt.ts';
import { holesToShow_m } from '#lib/model/hole-to-show.ts';
import { lowerBound_m, thinnestOfFive_m } from '#lib/model/lower-bound.ts';
import { AT_FREEZE_UP } from '#lib/model/since-anchor.ts';
import { column, seasonDay } from '../support/invented-winter.ts';

function boundsAfter(clear_m: number) {
	const day = seasonDay({ column: column({ clear_m }) });
	const since = { ...AT_FREEZE_UP, anchored_m: clear_m, read_d: 0, layersRead: true };
	const { effective } = doubtOf(day, since, CERTAIN);
	return { spot_m: lowerBound_m(clear_m, effective), five_m: thinnestOfFive_m(clear_m, effective) };
}

test('holes of the thickness it names put the bound on the requirement', () => {
	const foot_m = holesToShow_m(0.15, seasonDay(), false);
	const sled_m = holesToShow_m(0.25, seasonDay(), true);
	expect(boundsAfter(foot_m).spot_m).toBeCloseTo(0.15, 2);
	expect(boundsAfter(foot_m).spot_m).toBeGreaterThanOrEqual(0.15);
	expect(boundsAfter(sled_m).five_m).toBeCloseTo(0.25, 2);
});

test('vehicles ask more of the holes than people on foot', () => {
	expect(holesToShow_m(0.25, seasonDay(), true)).toBeGreaterThan(
		holesToShow_m(0.25, seasonDay(), false)
	);
});
