import { holeTotal_m } from './hole.ts';
import type { Hole } from './reading.ts';

/** What some holes say about the site: the mean of each layer over the holes that have it. */
export interface HoleMeans {
	total_m: number | null;
	/** Share of white ice in the total, from holes that told the layers apart. */
	whiteShare: number | null;
	snow_m: number | null;
	slush_m: number | null;
}

/** Means over holes; a layer that no hole has is `null`. */
export function holeMeans(holes: readonly Hole[]): HoleMeans {
	return {
		total_m: mean(holes.map(holeTotal_m)),
		whiteShare: mean(holes.map(whiteShare)),
		snow_m: mean(holes.map((hole) => hole.snow_m)),
		slush_m: mean(holes.map((hole) => hole.slush_m))
	};
}

function whiteShare(hole: Hole): number | null {
	const { total_m, clear_m, white_m } = hole;
	if (clear_m !== null && white_m !== null)
		return clear_m + white_m > 0 ? white_m / (clear_m + white_m) : null;
	if (total_m === null || total_m <= 0) return null;
	if (white_m !== null) return Math.min(1, white_m / total_m);
	return clear_m === null ? null : Math.max(0, 1 - clear_m / total_m);
}

/** Mean of the known values; `null` when there is none. */
export function mean(values: readonly (number | null)[]): number | null {
	const known = values.filter((value): value is number => value !== null);
	return known.length === 0 ? null : known.reduce((sum, value) => sum + value, 0) / known.length;
}
