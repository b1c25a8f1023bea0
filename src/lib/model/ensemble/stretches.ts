import { addDays } from '../calendar.ts';
import type { ThicknessChance } from './dates.ts';

/** Days in a row that it takes to begin, and to end. */
const IN_A_ROW = 3;

/** Where a run of days begins in a list and where it ends, both inclusive. */
export interface Stretch {
	first: number;
	last: number;
	/** It falls after its last day, within what is told. */
	falls: boolean;
}

/** The first of three days in a row, from an index on, with a level or more; -1 where there are none. */
export function firstInARow(days: readonly ThicknessChance[], level: number, from = 0): number {
	let row = 0;
	for (let i = from; i < days.length; i++) {
		const { on, pThickness } = days[i] ?? { on: '', pThickness: null };
		const before = days[i - 1]?.on;
		if (before === undefined || addDays(before, 1) !== on) row = 0;
		row = (pThickness ?? 0) >= level ? row + 1 : 0;
		if (row === IN_A_ROW) return i - IN_A_ROW + 1;
	}
	return -1;
}

/**
 * The stretch of days with a level or more that begins at an index: to the last of them before three
 * days in a row below it, or before a single one below `ends`, or before the end of what is told.
 *
 * One that comes again later is another stretch: what was met in February and is again in April is not
 * met until April. A day that is not estimated is neither.
 */
export function stretchFrom(
	days: readonly ThicknessChance[],
	level: number,
	first: number,
	ends = 0
): Stretch {
	let last = first;
	let below = 0;
	for (let i = first; i < days.length; i++) {
		const chance = days[i]?.pThickness ?? null;
		if (chance === null) continue;
		if (chance >= level) last = i;
		below = chance >= level ? 0 : below + 1;
		if (below === IN_A_ROW || chance < ends) return { first, last, falls: true };
	}
	return { first, last, falls: below > 0 };
}
