import { dateShape } from '../cells/dates.ts';
import { isTextShape } from './date-form.ts';
import type { Reading } from './delimiter.ts';
import { datePart, headingOf } from '../cells/header-roles.ts';
import { knownUnit } from '../cells/header-units.ts';
import type { CsvRecord } from './records.ts';

/** Where the headings and the rows of a table are. */
export interface Layout {
	/** 0 where there is no heading line. */
	headerLine: number;
	header: string[];
	/** The line of units below the headings, empty cells where there is none. */
	unitLine: string[];
	/** Rows and what follows, from the first row on. */
	rows: CsvRecord[];
	/** First line of the first row. */
	firstRowLine: number;
}

/** Lines of notes above the headings are skipped; blank lines count as lines. */
export function findLayout({ records: all, width }: Reading): Layout {
	const records = all.filter(({ cells }) => !cells.every((cell) => /^[-=_]{2,}$/.test(cell)));
	const first = firstDatedRow(records, width);
	return first === null ? byHeadings(records) : aboveRow(records, first);
}

function firstDatedRow(records: readonly CsvRecord[], width: number): number | null {
	const alike = records.filter(({ cells }) => cells.length === width && width > 1);
	const column = columnOfDates(alike, width);
	if (column === null) return null;
	const first = records.findIndex(
		({ cells }) => cells.length === width && dateShape(cells[column] ?? '') !== null
	);
	return first < 0 ? null : first;
}

/** Columns of plain digits come last: a station's number can look like a day. */
function columnOfDates(rows: readonly CsvRecord[], width: number): number | null {
	let best: { column: number; score: number } | null = null;
	for (let column = 0; column < Math.min(width, 40); column += 1) {
		const shapes = rows.map(({ cells }) => dateShape(cells[column] ?? ''));
		const texts = shapes.filter(isTextShape).length;
		const digits = shapes.filter((shape) => shape !== null).length - texts;
		const score = texts + digits / 2;
		if (score > (best?.score ?? 0)) best = { column, score };
	}
	return best?.column ?? null;
}

function aboveRow(records: readonly CsvRecord[], first: number): Layout {
	const below = records[first - 1];
	const above = records[first - 2];
	if (below && above && isUnitLine(below.cells) && isHeader(above.cells)) {
		return layoutOf(records, first, above, below);
	}
	return layoutOf(records, first, below && isHeader(below.cells) ? below : null, null);
}

/** Without a single date, the headings are the line that names most columns we know. */
function byHeadings(records: readonly CsvRecord[]): Layout {
	const known = records.map(({ cells }) => (isHeader(cells) ? knownHeadings(cells) : 0));
	const most = known.reduce((best, count) => Math.max(best, count), 0);
	const at = most === 0 ? -1 : known.indexOf(most);
	if (at < 0) return layoutOf(records, 0, null, null);
	const next = records[at + 1];
	const hasUnits = next !== undefined && isUnitLine(next.cells);
	return layoutOf(records, at + (hasUnits ? 2 : 1), records[at] ?? null, hasUnits ? next : null);
}

function layoutOf(
	records: readonly CsvRecord[],
	first: number,
	header: CsvRecord | null,
	units: CsvRecord | null
): Layout {
	const rows = records.slice(first);
	const width = rows[0]?.cells.length ?? 0;
	const named = header ? withoutTrailingBlanks(header.cells) : [];
	return {
		headerLine: header?.line ?? 0,
		header: header ? named.map(bare) : Array.from({ length: width }, (_, at) => `column ${at + 1}`),
		unitLine: units?.cells ?? [],
		rows,
		firstRowLine: rows[0]?.line ?? (records.at(-1)?.lastLine ?? 0) + 1
	};
}

function isHeader(cells: readonly string[]): boolean {
	const filled = cells.filter((cell) => cell !== '');
	return (
		filled.length > 1 && filled.every((cell) => !/^[+-]?[\d.,]+$/.test(cell) && !dateShape(cell))
	);
}

function isUnitLine(cells: readonly string[]): boolean {
	const filled = cells.filter((cell) => cell !== '' && cell !== '-');
	const units = filled.filter((cell) => knownUnit(cell.replace(/^[([{]|[)\]}]$/g, '')) !== null);
	return units.length > 0 && knownHeadings(cells) <= 1;
}

function knownHeadings(cells: readonly string[]): number {
	return cells.filter((cell) => datePart(cell) !== null || headingOf(cell, '').role !== 'ignore')
		.length;
}

function withoutTrailingBlanks(cells: readonly string[]): string[] {
	const last = cells.findLastIndex((cell) => cell !== '');
	return cells.slice(0, last + 1);
}

function bare(cell: string): string {
	return cell.replace(/^\uFEFF?(#|\/\/)?\s*/, '');
}
