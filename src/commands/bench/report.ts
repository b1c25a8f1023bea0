import { addDays } from '#lib/model/calendar.ts';
import type { IceColumn } from '#lib/model/column.ts';
import { runSeason } from '#lib/model/season.ts';
import type { CLayers, CSeason } from './c-season.ts';
import { runCSeason } from './c-season.ts';
import { inventedWinter } from './invented-winter.ts';
import { medianTime_ms } from './median-time.ts';

const CALLS = 500;
const WARM_UP = 200;

/** C and TypeScript are the same equations only while their layers agree to this. */
const AGREEMENT_m = 1e-4;

export interface BenchReport {
	node: string;
	season: {
		days: number;
		median_ms: number;
		c: {
			status: CSeason['status'] | 'disagrees';
			median_ms: number | null;
			/** TypeScript over C. */
			ratio: number | null;
			largestDifference_m: number | null;
		};
	};
	/** What a reader must know before trusting the figures. */
	warnings: string[];
}

/** Times one invented winter through the model, and the same equations in C where that can be. */
export function benchReport(): BenchReport {
	const winter = inventedWinter();
	const columns = runSeason(winter).map((day) => day.column);
	const median_ms = medianTime_ms(() => runSeason(winter), CALLS, WARM_UP);
	const { c, warnings } = compare(runCSeason(winter), columns, median_ms);
	const until = addDays(winter.freezeUpOn, columns.length - 1);
	if (until !== winter.until) warnings.push(`the model stopped on ${until}, not ${winter.until}`);
	return { node: process.version, season: { days: columns.length - 1, median_ms, c }, warnings };
}

function compare(
	c: CSeason,
	columns: readonly IceColumn[],
	median_ms: number
): { c: BenchReport['season']['c']; warnings: string[] } {
	const nothing = { median_ms: null, ratio: null, largestDifference_m: null };
	if (c.status === 'noCompiler')
		return {
			c: { status: c.status, ...nothing },
			warnings: ['there is no cc here: the ratio to C is not measured']
		};
	if (c.status === 'failed')
		return {
			c: { status: c.status, ...nothing },
			warnings: [`season.c could not be compiled or run: ${c.message}`]
		};
	const largestDifference_m = largestDifference(columns, c.states);
	if (!(largestDifference_m <= AGREEMENT_m))
		return {
			c: { status: 'disagrees', ...nothing, largestDifference_m },
			warnings: [
				`season.c and the model differ by up to ${(largestDifference_m * 1000).toFixed(2)} mm: they are not the same equations, so no ratio is given`
			]
		};
	return {
		c: {
			status: 'ran',
			median_ms: c.median_ms,
			ratio: median_ms / c.median_ms,
			largestDifference_m
		},
		warnings: []
	};
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
