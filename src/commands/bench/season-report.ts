import { addDays } from '#lib/model/calendar.ts';
import type { IceColumn } from '#lib/model/column.ts';
import { runSeason } from '#lib/model/season.ts';
import { compareWithC, type CComparison, type CRun } from './c-comparison.ts';
import { runCSeason, type CLayers, type CSeason } from './c-season.ts';
import { inventedWinter } from './invented-winter.ts';
import { medianTime_ms } from './median-time.ts';

const CALLS = 500;
const WARM_UP = 200;

/** C and TypeScript are the same equations only while their layers agree to this. */
const AGREEMENT_m = 1e-6;

export interface SeasonReport {
	days: number;
	median_ms: number;
	c: CComparison;
}

/** Times one invented winter through the model, and the same equations in C where that can be. */
export function seasonReport(): { season: SeasonReport; warnings: string[] } {
	const winter = inventedWinter();
	const columns = runSeason(winter).map((day) => day.column);
	const median_ms = medianTime_ms(() => runSeason(winter), CALLS, WARM_UP);
	const { c, warnings } = compareWithC(
		'time-season.c',
		median_ms,
		compared(runCSeason(winter), columns),
		AGREEMENT_m
	);
	const until = addDays(winter.freezeUpOn, columns.length - 1);
	if (until !== winter.until) warnings.push(`the model stopped on ${until}, not ${winter.until}`);
	return { season: { days: columns.length - 1, median_ms, c }, warnings };
}

function compared(c: CSeason, columns: readonly IceColumn[]): CRun {
	if (c.status !== 'ran') return c;
	const { status, median_ms, states } = c;
	return { status, median_ms, largestDifference_m: largestDifference(columns, states) };
}

/** Over all days and layers; infinite when the number of days differs. */
export function largestDifference(
	columns: readonly IceColumn[],
	states: readonly CLayers[]
): number {
	if (columns.length !== states.length) return Infinity;
	return columns.reduce((largest, column, i) => {
		const [clear_m, white_m, slush_m, snow_m] = states[i] ?? [NaN, NaN, NaN, NaN];
		return Math.max(
			largest,
			Math.abs(column.clear_m - clear_m),
			Math.abs(column.white_m - white_m),
			Math.abs(column.slush_m - slush_m),
			Math.abs(column.snow_m - snow_m)
		);
	}, 0);
}
