import { parse } from 'csv-parse/sync';

export interface TableRow {
	line: number;
	/** Trimmed cells by column name. */
	cells: Map<string, string>;
}

export interface Table {
	header: string[];
	rows: TableRow[];
	problems: { line: number; reason: string }[];
}

/** Also what has been made harmless already, so that it comes back as it was. */
const FORMULA = /^'*[=+\-@\t\r]/;

/** A small CSV text with a header; comma, semicolon or tab, whichever its first line has most of. */
export function readTable(text: string): Table {
	const [first = ''] = text.split(/\r?\n/, 1);
	const delimiter =
		[',', ';', '\t'].toSorted((a, b) => count(first, b) - count(first, a))[0] ?? ',';
	try {
		const parsed: unknown = parse(text, {
			delimiter,
			bom: true,
			info: true,
			relax_column_count: true,
			skip_empty_lines: true,
			max_record_size: 65_536
		});
		return toTable(parsed as Parsed[]);
	} catch (cause) {
		const { lines, message } = cause as { lines?: number; message: string };
		return { header: [], rows: [], problems: [{ line: lines ?? 1, reason: message }] };
	}
}

/** A text cell for CSV that no spreadsheet takes for a formula, quoted where needed. */
export function neutralCell(text: string): string {
	const plain = FORMULA.test(text) ? `'${text}` : text;
	return /[",;\r\n\t]/.test(plain) ? `"${plain.replaceAll('"', '""')}"` : plain;
}

interface Parsed {
	record: string[];
	info: { lines: number };
}

function toTable([head, ...body]: Parsed[]): Table {
	const header = (head?.record ?? []).map((name) => name.trim());
	const problems = body
		.filter(({ record }) => record.length > header.length)
		.map(({ info, record }) => ({
			line: info.lines,
			reason: `${record.length} cells, but the header has ${header.length}`
		}));
	const rows = body.map(({ record, info }) => ({
		line: info.lines,
		cells: new Map(header.map((name, index) => [name, originalCell(record[index] ?? '')]))
	}));
	return { header, rows, problems };
}

/** Takes back what {@link neutralCell} put before a formula sign. */
export function originalCell(cell: string): string {
	const text = cell.trim();
	return text.startsWith("'") && FORMULA.test(text.slice(1)) ? text.slice(1) : text;
}

function count(text: string, part: string): number {
	return text.split(part).length - 1;
}
