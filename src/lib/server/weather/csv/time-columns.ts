import { readClock } from '../cells/clock.ts';
import { dateShape } from '../cells/dates.ts';
import { isTextShape } from './date-form.ts';
import { datePart, type Heading } from '../cells/header-roles.ts';
import type { CsvRecord } from './records.ts';
import { DATE_PARTS } from '../cells/units.ts';

/** A heading, and whether its column was given another role by hand. */
export type OpenHeading = Heading & { isTaken: boolean };

/** Where a row says when it was: one column, or day and clock, or year, month and day apart. */
export interface TimeColumns {
	/** One column, or three for year, month and day. */
	date: readonly number[];
	clock: number | null;
}

const ROWS_LOOKED_AT = 500;

/** The columns that date a row, by their headings and by what stands in them; `null` if none does. */
export function findTimeColumns(
	headers: readonly string[],
	headings: readonly OpenHeading[],
	rows: readonly CsvRecord[]
): TimeColumns | null {
	const sample = rows.slice(0, ROWS_LOOKED_AT);
	const dated = columnOfDates(headings, sample);
	if (dated !== null) return { date: [dated], clock: findClock(dated, headings, sample) };
	const parts = DATE_PARTS.map((part) => headers.findIndex((header) => datePart(header) === part));
	if (parts.every((index) => index >= 0)) {
		return { date: parts, clock: findClock(null, headings, sample) };
	}
	const named = headings.findIndex(
		({ role, isTaken }) => !isTaken && (role === 'date' || role === 'time')
	);
	return named < 0 ? null : { date: [named], clock: findClock(named, headings, sample) };
}

/** The clock column that goes with a date column whose cells carry no time of day. */
export function findClock(
	dateColumn: number | null,
	headings: readonly OpenHeading[],
	rows: readonly CsvRecord[]
): number | null {
	const dates = dateColumn === null ? [] : rows.map(({ cells }) => cells[dateColumn] ?? '');
	if (dates.some(carriesClock)) return null;
	const found = headings.findIndex(
		({ role, isTaken }, index) =>
			!isTaken &&
			index !== dateColumn &&
			(role === 'clock' || role === 'time') &&
			share(rows, (cells) => typeof readClock(cells[index] ?? '') !== 'string') > 0.5
	);
	return found < 0 ? null : found;
}

function columnOfDates(
	headings: readonly OpenHeading[],
	rows: readonly CsvRecord[]
): number | null {
	let best: { index: number; rank: number } | null = null;
	for (const [index, { role, rank, isTaken }] of headings.entries()) {
		if (isTaken) continue;
		const isNamed = role === 'date' || role === 'time';
		const looksDated = share(rows, (cells) => {
			const shape = dateShape(cells[index] ?? '');
			return isNamed || index === 0 ? shape !== null : isTextShape(shape);
		});
		const own = isNamed ? rank : 9;
		if (looksDated > 0.5 && own < (best?.rank ?? 10)) best = { index, rank: own };
	}
	return best?.index ?? null;
}

function share(rows: readonly CsvRecord[], holds: (cells: readonly string[]) => boolean): number {
	return rows.length === 0 ? 0 : rows.filter(({ cells }) => holds(cells)).length / rows.length;
}

function carriesClock(text: string): boolean {
	return (
		/\d[T\s]\s*\d{1,2}[:.h]\d{2}/i.test(text) ||
		/^\d{10,}/.test(text) ||
		/^\d{8}[T :_]\d/.test(text)
	);
}
