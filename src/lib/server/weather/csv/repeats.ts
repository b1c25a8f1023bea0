import type { RowProblem } from './problem.ts';

/** The values of a day, an hour or a moment, `null` where missing. */
export type Values = readonly (number | null)[];

/** What became of a row, and of the one for the same day or hour that was there before. */
export interface Entry {
	status: 'new' | 'completed' | 'repeated' | 'replaced';
	values: Values;
	/** Of the row before. */
	earlierLine: number;
}

/** Of two rows for the same time the later stands; a cell that is empty in it keeps the earlier value. */
export function mergeRows(earlier: Values, earlierLine: number, later: Values): Entry {
	const values = later.map((value, field) => value ?? earlier[field] ?? null);
	const changed = later
		.map((_, field) => field)
		.filter((field) => later[field] !== null && later[field] !== earlier[field]);
	if (changed.length === 0) return { status: 'repeated', values, earlierLine };
	const replaces = changed.some((field) => earlier[field] !== null);
	return { status: replaces ? 'replaced' : 'completed', values, earlierLine };
}

/** What to tell of a line whose day or hour was there before, or `null`. */
export function duplicateOf(
	{ status, earlierLine }: Entry,
	line: number,
	what: 'day' | 'hour' | 'time'
): RowProblem | null {
	if (status === 'repeated') {
		return {
			line,
			reason: `repeats the ${what} of line ${earlierLine} with nothing new, and is dropped`
		};
	}
	if (status !== 'replaced') return null;
	return {
		line: earlierLine,
		reason: `line ${line} gives other values for the same ${what} and stands; remove the wrong one of the two`
	};
}
