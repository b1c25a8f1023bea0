import { CERTAIN, doubtOf } from './doubt.ts';
import { lowerBound_m, thinnestOfFive_m } from './lower-bound.ts';
import type { SeasonDay } from './season.ts';
import { AT_FREEZE_UP } from './since-anchor.ts';

/** Fine enough for a number that is shown in whole centimetres. */
const CLOSE_m = 0.0005;
/** No lake ice is thicker. */
const THICKEST_m = 5;

/**
 * Mean thickness of clear ice that a day's holes would have to show for the bound to clear a
 * requirement at once. The inverse of the bound just after a reading, by bisection.
 */
export function holesToShow_m(required_m: number, today: SeasonDay, isVehicle: boolean): number {
	let low_m = required_m;
	let high_m = THICKEST_m;
	while (high_m - low_m > CLOSE_m) {
		const middle_m = (low_m + high_m) / 2;
		if (boundAfter_m(middle_m, today, isVehicle) >= required_m) high_m = middle_m;
		else low_m = middle_m;
	}
	return high_m;
}

function boundAfter_m(clear_m: number, today: SeasonDay, isVehicle: boolean): number {
	const day: SeasonDay = {
		...today,
		column: { ...today.column, clear_m, white_m: 0, slush_m: 0 },
		snowKnown: true
	};
	const fresh = { ...AT_FREEZE_UP, anchored_m: clear_m, read_d: 0, layersRead: true };
	const { effective } = doubtOf(day, fresh, CERTAIN);
	return isVehicle ? thinnestOfFive_m(clear_m, effective) : lowerBound_m(clear_m, effective);
}
