import { believedSd } from './ensemble/kalman.ts';
import { holeScatter_m, placeScatter_m, spotFraction, TAPE_m } from './ensemble/scatter.ts';
import { isVehicle, type LoadCase } from './load-case.ts';
import { lowerBound_m, thinnestOfFive_m } from './lower-bound.ts';
import { holesFor } from './reached.ts';
import { bound_m, type SiteDay } from './site-day.ts';

/** Fine enough for a number that is shown in whole centimetres. */
const STEP_m = 0.005;
/** Thicker holes than this are not asked for. */
const THICKEST_m = 2;

/**
 * Mean thickness of clear ice that a day's holes, as many as the load asks, would have to show for the
 * bound to clear a requirement at once; `null` where one day's holes can't lift it that far.
 *
 * What readings do to the ensemble, for one normal quantity: mean and spread of the site are pulled to
 * the holes, robustly, and 1 - 1/n of the rise is let through.
 */
export function holesToShow_m(required_m: number, today: SiteDay, load: LoadCase): number | null {
	const steps = Math.ceil((THICKEST_m - required_m) / STEP_m);
	for (let step = 0; step <= steps; step++) {
		const mean_m = required_m + step * STEP_m;
		if (boundAfter_m(mean_m, today, load) >= required_m) return mean_m;
	}
	return null;
}

function boundAfter_m(measured_m: number, today: SiteDay, load: LoadCase): number {
	const holes = holesFor(load);
	const { mean_m, sd_m } = today.site;
	const hole_m = Math.hypot(holeScatter_m(mean_m), TAPE_m) / Math.sqrt(holes);
	const read_m = Math.hypot(placeScatter_m(mean_m), hole_m);
	const above_m = Math.max(0, measured_m - mean_m);
	const sigma_m = believedSd(above_m, sd_m ** 2, read_m);
	const gain = sd_m ** 2 / (sd_m ** 2 + sigma_m ** 2);
	const estimate_m = mean_m + gain * (measured_m - mean_m);
	const spot = spotFraction(estimate_m) * estimate_m;
	const doubt = { site_m: sd_m * Math.sqrt(1 - gain), spot_m: spot };
	const after_m = isVehicle(load)
		? thinnestOfFive_m(estimate_m, doubt)
		: lowerBound_m(estimate_m, { ...doubt, spot_m: Math.hypot(spot, TAPE_m) });
	const before_m = bound_m(today, load);
	return after_m - Math.max(0, after_m - before_m) / holes;
}
