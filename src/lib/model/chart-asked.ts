import { goldThickness_m } from './bearing.ts';
import {
	chartMinimum,
	type ChartMinimum,
	type ChartSet,
	type ChartUse,
	type LoadCase
} from './load-case.ts';

/** What bears on the ice besides one load, and whether others are near by. */
export interface Company {
	added_kg: number;
	isGroup: boolean;
}

/** What a set of charts asks, and the row that says so; `null`: an engineer. */
export interface ChartAsked {
	row: ChartMinimum;
	thickness_m: number | null;
}

/**
 * What a set of charts asks for a load with all that counts with it.
 *
 *   h = √(h_row² + ΔP/A)
 *
 * A row is for one vehicle: what a trailer and others near by add is added as Gold's formula adds loads.
 * Our choice, no source. People on foot have a row for groups instead; where others are near no load asks
 * for less than that.
 */
export function chartAsked(
	load: LoadCase,
	minimums: readonly ChartMinimum[],
	set: ChartSet,
	{ added_kg, isGroup }: Company
): ChartAsked {
	const row = chartMinimum(minimums, set, rowOf(load, isGroup));
	if (row.thickness_m === null) return { row, thickness_m: null };
	const added_m = isMachine(load.use) ? goldThickness_m(added_kg) : 0;
	const group_m = isGroup ? (chartMinimum(minimums, set, 'group').thickness_m ?? 0) : 0;
	return { row, thickness_m: Math.max(Math.hypot(row.thickness_m, added_m), group_m) };
}

/** A load without a row of its own is held against the least that any chart asks. */
function rowOf({ use }: LoadCase, isGroup: boolean): ChartUse {
	if (use === null) return 'onFoot';
	return isGroup && use === 'onFoot' ? 'group' : use;
}

/** Rows for one vehicle, to which what comes on top is added. */
export function isMachine(use: ChartUse | null): boolean {
	return use !== null && use !== 'onFoot' && use !== 'group';
}
