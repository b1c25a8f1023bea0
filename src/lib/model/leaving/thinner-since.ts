import type { IsoDate } from '../calendar.ts';
import { holeTotal_m, thicknessHoles } from '../hole.ts';
import type { Since } from '../since/since.ts';

/** What was seen after the day of asking and is thinner than the estimate of that day. */
export interface ThinnerSince {
	on: IsoDate;
	/** The thinnest hole; 0 where the site has opened. */
	total_m: number;
}

/**
 * The thinnest that was seen of a site since the day of asking; `null` where nothing was, or nothing
 * thinner than the estimate by what is told as a loss. What has gone by then is not estimated before the
 * weather of that day is in, and must not be told as none.
 */
export function thinnerSince(
	since: Pick<Since, 'readings' | 'events'> | null,
	estimate_m: number | null
): ThinnerSince | null {
	if (since === null || estimate_m === null) return null;
	const opened = since.events
		.filter(({ kind }) => kind === 'reopened')
		.map(({ on }) => ({ on, total_m: 0 }));
	const holes = since.readings
		.filter(({ kind }) => kind === 'measured')
		.flatMap((reading) =>
			thicknessHoles(reading).map((hole) => ({ on: reading.on, total_m: holeTotal_m(hole) ?? 0 }))
		);
	const [thinnest] = [...opened, ...holes].toSorted((a, b) => a.total_m - b.total_m);
	return thinnest && thinnest.total_m <= estimate_m - LEAST_TOLD_m ? thinnest : null;
}

/** Less than a centimetre is not told. */
export const LEAST_TOLD_m = 0.01;
