import type { IsoDate } from '#lib/model/calendar.ts';
import type { ClearingPlan } from '#lib/model/tracks/clearing-plan.ts';
import type { FormInput } from './form-input.ts';

/** A clearing as it is thought of in a form. */
export interface TypedPlan {
	plan: ClearingPlan;
	width_m: number;
}

/** As much snow as anybody clears or bears, and as wide as anybody makes a track. */
const MOST_SNOW_m = 1;
const NARROWEST_m = 1;
const WIDEST_m = 100;
const LEAST_BORNE_m = 0.005;

/** The plan of a form; `null` while something has to be mended. */
export function readPlan(
	input: FormInput,
	{ today, last }: { today: IsoDate; last: IsoDate }
): TypedPlan | null {
	const from = input.day('firstOn');
	if (!input.text('firstOn')) input.refuse('firstOn', 'Choose the day of the first clearing.');
	if (from !== null && from < today) {
		input.refuse('firstOn', `${from} is past. What was done is logged as work, not planned.`);
	}
	if (from !== null && from > last) {
		input.refuse('firstOn', `${from} is after this winter, which ends on ${last}.`);
	}
	const left_m = input.quantity('left', 'length', { from: 0, to: MOST_SNOW_m, isRequired: true });
	const isAgain = input.text('again') === 'yes';
	const over_m = input.quantity('over', 'length', {
		from: LEAST_BORNE_m,
		to: MOST_SNOW_m,
		isRequired: isAgain
	});
	const width_m = input.quantity('width', 'height', {
		from: NARROWEST_m,
		to: WIDEST_m,
		isRequired: true
	});
	if (input.issues.length > 0 || from === null || left_m === null || width_m === null) return null;
	return { plan: { from, left_m, afterSnow_m: isAgain ? over_m : null }, width_m };
}
