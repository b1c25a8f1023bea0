import type { Reading } from './delimiter.ts';
import { MOST_COLUMNS, type Head } from './head.ts';
import type { Layout } from './layout.ts';
import type { RowProblem } from './problem.ts';
import { rowFits } from './records.ts';

/** Rows that don't fit their headings are rejected one by one up to this share; then the file is. */
const MOST_STRAYS = 0.2;

/** Why a text is no table, or `null`. */
export function problemOfReading(
	{ failure, width, records }: Reading,
	head: Head
): RowProblem | null {
	const lines = head.text.split('\n').length;
	// A cell of several lines may go on behind the head.
	if (failure && !(head.isCut && failure.line > lines - 20)) return failure;
	if (width > MOST_COLUMNS) {
		return {
			line: records[0]?.line ?? 1,
			reason: `the rows have ${width} columns, more than ${MOST_COLUMNS}; keep the date and the weather only`
		};
	}
	if (width > 1) return null;
	return {
		line: 1,
		reason:
			'no columns were found: no line is divided by commas, semicolons, tabs or "|"; save the table as CSV with one of them'
	};
}

/** Why the rows of a table don't go with its headings, or `null`. */
export function problemOfLayout(
	{ header, headerLine, rows }: Layout,
	reading: Reading
): RowProblem | null {
	const tabular = rows.filter(({ cells }) => cells.length > 1);
	const [first] = tabular;
	if (!first) {
		return {
			line: Math.max(1, headerLine),
			reason: 'there are headings but no rows below them; choose a file with weather in it'
		};
	}
	const misfits = tabular.filter(({ cells }) => !rowFits(cells, header.length));
	const [misfit] = misfits;
	if (!misfit || misfits.length <= Math.max(tabular.length * MOST_STRAYS, 1)) return null;
	const isComma = reading.delimiter === ',' && misfit.cells.length > header.length;
	return {
		line: misfit.line,
		reason:
			`the row has ${misfit.cells.length} values under ${header.length} headings` +
			(isComma
				? '; if the comma is the decimal mark too, save the table with semicolons between the columns'
				: '; give every column one heading and every row all its columns')
	};
}
