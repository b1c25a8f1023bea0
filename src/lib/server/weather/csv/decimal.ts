import type { ValueColumn } from './chosen-columns.ts';
import type { CsvOptions } from './contract.ts';
import type { Delimiter } from './delimiter.ts';
import type { Layout } from './layout.ts';
import { voteDecimal, type Decimal } from '../cells/numbers.ts';
import type { RowProblem } from './problem.ts';

/** Numbers with the other mark are rejected one by one up to this share; then the file is. */
const MOST_STRAYS = 0.2;

/** The decimal mark of a table's numbers, and why it can't be told where it can't. */
export function decimalOf(
	{ rows }: Layout,
	columns: readonly ValueColumn[],
	delimiter: Delimiter,
	options: CsvOptions
): { decimal: Decimal; problem: RowProblem | null } {
	const cells = rows.flatMap((row) => columns.map(({ index }) => row.cells[index] ?? ''));
	const { decimal, strayShare } = voteDecimal(cells);
	if (options.decimal) return { decimal: options.decimal, problem: null };
	if (delimiter === ',' && decimal === ',' && couldBeThousands(cells)) {
		const reason =
			'the commas inside the numbers can be decimal marks or stand between thousands; write plain numbers';
		return { decimal, problem: { line: rows[0]?.line ?? 1, reason } };
	}
	if (strayShare <= MOST_STRAYS) return { decimal, problem: null };
	const other = decimal === '.' ? ',' : '.';
	const stray = rows.find((row) => columns.some(({ index }) => row.cells[index]?.includes(other)));
	const reason = `some numbers have "." and some "," as their decimal mark, here "${other}"; write all of them alike`;
	return { decimal, problem: { line: stray?.line ?? 1, reason } };
}

function couldBeThousands(cells: readonly string[]): boolean {
	return cells.every((cell) => !cell.includes(',') || /^[1-9]\d{0,2},\d{3}$/.test(cell));
}
