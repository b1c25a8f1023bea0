import { effective_m } from '../bearing.ts';
import type { IceColumn } from '../column.ts';
import { meanOf } from './kalman.ts';
import type { Members } from './members.ts';

/**
 * One column for an ensemble: a given thickness and snow depth, white ice in the members' mean
 * proportion, the mean of their slush and of the water in those that have ice.
 */
export function meanColumn(members: Members, total_m: number, snow_m: number): IceColumn {
	const clear = meanOf(members.clear_m);
	const white = meanOf(members.white_m);
	const share = clear + white > 0 ? white / (clear + white) : 0;
	return {
		snow_m,
		snowDensity_kg_m3: weighted(members.snowDensity_kg_m3, members.snow_m),
		slush_m: meanOf(members.slush_m),
		white_m: share * total_m,
		clear_m: (1 - share) * total_m,
		liquidFraction: weighted(members.liquidFraction, members.clear_m)
	};
}

function weighted(values: Float64Array, weights: Float64Array): number {
	let sum = 0;
	let all = 0;
	for (let i = 0; i < values.length; i++) {
		sum += (values[i] ?? 0) * (weights[i] ?? 0);
		all += weights[i] ?? 0;
	}
	return all > 0 ? sum / all : 0;
}

/** Effective thickness of each member's site. */
export function effectiveOf({ clear_m, white_m }: Members): Float64Array {
	const effective = new Float64Array(clear_m.length);
	for (let i = 0; i < effective.length; i++)
		effective[i] = effective_m({ clear_m: clear_m[i] ?? 0, white_m: white_m[i] ?? 0 });
	return effective;
}
