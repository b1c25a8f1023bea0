import { CsvError, parse } from 'csv-parse/sync';
import { z } from 'zod';
import { originalCell } from '../csv-table.ts';

/** What is wrong with a table; line 0 is the table as a whole. */
export interface TableProblem {
	line: number;
	reason: string;
}

export interface TidyTable<Row> {
	rows: { line: number; row: Row }[];
	problems: TableProblem[];
}

const parsedFile = z.array(
	z.object({ info: z.object({ lines: z.number() }), record: z.record(z.string(), z.string()) })
);

/**
 * The rows of a comma-separated table, each checked by `schema`, and what is wrong with the others.
 * Columns that the schema doesn't name are ignored, columns that it names as optional may be absent.
 */
export function readTidyTable<Row>(
	text: string,
	schema: z.ZodType<Row>,
	needed: readonly string[]
): TidyTable<Row> {
	const parsed = parseCsv(text);
	if (typeof parsed === 'string') return refused(`is not a comma-separated table: ${parsed}`);
	const [first] = parsed;
	if (!first) return refused('has no rows');
	const missing = needed.filter((column) => !(column in first.record));
	if (missing.length > 0) return refused(`has no column ${missing.join(', ')} in its first line`);
	const table: TidyTable<Row> = { rows: [], problems: [] };
	for (const { info, record } of parsed) {
		const cells = Object.entries(record).map(([name, cell]) => [name, originalCell(cell)]);
		const row = schema.safeParse(Object.fromEntries(cells));
		if (row.success) table.rows.push({ line: info.lines, row: row.data });
		else table.problems.push({ line: info.lines, reason: told(row.error) });
	}
	return table;
}

function parseCsv(text: string): z.infer<typeof parsedFile> | string {
	try {
		const rows: unknown = parse(text, {
			bom: true,
			columns: (header: string[]) => header.map((cell) => cell.trim()),
			info: true,
			skip_empty_lines: true,
			max_record_size: 65_536
		});
		return parsedFile.parse(rows);
	} catch (error) {
		if (!(error instanceof CsvError)) throw error;
		return error.message;
	}
}

function refused<Row>(reason: string): TidyTable<Row> {
	return { rows: [], problems: [{ line: 0, reason }] };
}

function told(error: z.ZodError): string {
	const [issue] = error.issues;
	return `column ${issue?.path.join('.') ?? ''}: ${issue?.message ?? 'cannot be used'}`;
}
