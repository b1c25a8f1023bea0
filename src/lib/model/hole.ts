import { effective_m } from './bearing.ts';
import { total_m, type IceColumn } from './column.ts';
import type { Hole, Reading } from './reading.ts';

/** True when somebody drilled and the thickness, or the least of it, is known. */
export function isDrilled(reading: Reading): boolean {
	return thicknessHoles(reading).length > 0;
}

/** True for a core seen to be sound, not one that was told of; where ice broke it says nothing of the rest. */
export function isSoundCore({ core, kind, secondHand }: Reading): boolean {
	return core === 'sound' && kind !== 'wentThrough' && !secondHand;
}

/** True when somebody saw ice in a hole: by then the site had frozen over. */
export function showsIce(reading: Reading): boolean {
	return (
		!reading.secondHand && thicknessHoles(reading).some((hole) => (holeTotal_m(hole) ?? 0) > 0)
	);
}

/** The holes whose thickness is known; where the ice broke there are none. */
export function thicknessHoles(reading: Reading): Hole[] {
	if (reading.kind === 'wentThrough') return [];
	return reading.holes.filter((hole) => holeTotal_m(hole) !== null);
}

/**
 * Clear and white ice of a hole, from its total or its layers; `null` when neither is known. Where
 * they do not sum there is slush between them or a slip of the pen, and the smaller account counts.
 */
export function holeTotal_m(hole: Hole): number | null {
	const { clear_m, white_m } = hole;
	if (clear_m === null && white_m === null) return hole.total_m;
	if (clear_m === null || white_m === null) return hole.total_m ?? clear_m ?? white_m;
	return Math.min(clear_m + white_m, hole.total_m ?? Infinity);
}

/**
 * Effective thickness of a hole: from its layers where they were told apart, else in the proportion
 * of the column the site is estimated to have. Half, as if all were white, where there is none.
 */
export function holeEffective_m(hole: Hole, column: IceColumn): number | null {
	const whole_m = holeTotal_m(hole);
	if (whole_m === null) return null;
	const clear_m = hole.clear_m ?? whole_m - (hole.white_m ?? whole_m * whiteFraction(column));
	const counted_m = Math.min(Math.max(0, clear_m), whole_m - (hole.white_m ?? 0));
	return effective_m({
		clear_m: Math.max(0, counted_m),
		white_m: whole_m - Math.max(0, counted_m)
	});
}

function whiteFraction(column: IceColumn): number {
	const modelled_m = total_m(column);
	return modelled_m > 0 ? column.white_m / modelled_m : 1;
}
