import { showsIce } from '../hole.ts';
import type { Reading } from '../reading.ts';
import type { Ensemble } from './begin.ts';

/**
 * Squares a day's readings with a freeze-up that is known only between two days: where somebody has
 * drilled ice every member is frozen over by then; else those that are not yet stay open water, which
 * a reading of others must not pull ice into.
 */
export function squareWithFreezeUp(
	ensemble: Ensemble,
	today: readonly Reading[],
	index: number
): void {
	if (today.some(showsIce)) ensemble.startsOn = ensemble.startsOn.map((at) => Math.min(at, index));
	const { clear_m, white_m, slush_m, snow_m } = ensemble.members;
	ensemble.startsOn.forEach((at, i) => {
		if (index < at) for (const layer of [clear_m, white_m, slush_m, snow_m]) layer[i] = 0;
	});
}
