import { Parser, type CsvError, type Options } from 'csv-parse';
import { parse } from 'csv-parse/sync';
import type { RowProblem } from './problem.ts';

const LONGEST_RECORD = 65_536;
/** Of the head of a file, which no table of a date and a value passes: 64 kB of nothing but line ends would. */
const MOST_HEAD_RECORDS = 6000;

export interface CsvRecord {
	cells: string[];
	/** First line of the record in the original file, 1-based. */
	line: number;
	/** Differs from `line` where a quoted cell holds line ends. */
	lastLine: number;
}

export interface Parsed {
	records: CsvRecord[];
	/** Nothing after this line could be read. */
	failure: RowProblem | null;
}

/** True where a row has a cell under every heading, and nothing but blanks beyond. */
export function rowFits(cells: readonly string[], width: number): boolean {
	return cells.length >= width && cells.slice(width).every((cell) => cell === '');
}

/** The first records of a text whose line ends are LF. */
export function parseText(text: string, delimiter: string): Parsed {
	const records: CsvRecord[] = [];
	try {
		const options = { ...parserOptions(delimiter, 0, records), to: MOST_HEAD_RECORDS };
		withoutTraces(() => parse(text, options));
		return { records, failure: null };
	} catch (error) {
		return { records, failure: failureOf(error, 1, records.at(-1)) };
	}
}

/** Reads records from a text that comes in pieces, holding no more than one record back. */
export class RecordReader {
	readonly #parser: Parser;
	readonly #firstLine: number;
	#records: CsvRecord[] = [];
	#last: CsvRecord | undefined;
	#error: unknown = null;

	constructor(delimiter: string, firstLine: number) {
		this.#firstLine = firstLine;
		this.#parser = new Parser(parserOptions(delimiter, firstLine - 1, this.#records));
		this.#parser.on('error', (error) => {
			this.#error = error;
		});
	}

	async push(text: string): Promise<Parsed> {
		await new Promise<void>((resolve) => {
			withoutTraces(() => this.#parser.write(text, () => resolve()));
		});
		return this.#take();
	}

	async end(): Promise<Parsed> {
		await new Promise<void>((resolve) => {
			this.#parser.once('error', () => resolve());
			this.#parser.once('finish', () => resolve());
			this.#parser.end();
		});
		return this.#take();
	}

	#take(): Parsed {
		const records = this.#records.splice(0);
		this.#last = records.at(-1) ?? this.#last;
		const failure = this.#error ? failureOf(this.#error, this.#firstLine, this.#last) : null;
		return { records, failure };
	}
}

/**
 * The parser makes an error of every row that has not as many cells as the first, though it is told to
 * take them all. Writing down for each where it came from would be half of the work on a ragged file.
 */
function withoutTraces(work: () => void): void {
	const before = Error.stackTraceLimit;
	Error.stackTraceLimit = 0;
	try {
		work();
	} finally {
		Error.stackTraceLimit = before;
	}
}

function parserOptions(delimiter: string, linesBefore: number, into: CsvRecord[]): Options {
	return {
		delimiter,
		record_delimiter: '\n',
		relax_column_count: true,
		relax_quotes: true,
		skip_empty_lines: true,
		max_record_size: LONGEST_RECORD,
		on_record: (raw: string[], { lines }) => {
			const lastLine = lines + linesBefore;
			const breaks = raw.reduce((sum, cell) => sum + cell.split('\n').length - 1, 0);
			into.push({ cells: raw.map(tidy), line: lastLine - breaks, lastLine });
			return null;
		}
	};
}

/** Blanks around a cell, and quotation marks that stand after a blank, carry nothing. */
function tidy(cell: string): string {
	const text = cell.trim();
	return text.length > 1 && text.startsWith('"') && text.endsWith('"')
		? text.slice(1, -1).trim()
		: text;
}

function failureOf(error: unknown, firstLine: number, last: CsvRecord | undefined): RowProblem {
	const line = last ? last.lastLine + 1 : firstLine;
	if (isCsvError(error) && error.code === 'CSV_MAX_RECORD_SIZE') {
		return {
			line,
			reason:
				'the line is longer than 65,536 characters, or a quotation mark in it is never closed; ' +
				'put a line break after each row and close or remove the mark'
		};
	}
	if (isCsvError(error) && error.code === 'CSV_QUOTE_NOT_CLOSED') {
		return { line, reason: 'a quotation mark is opened and never closed; close or remove it' };
	}
	throw error;
}

function isCsvError(error: unknown): error is CsvError {
	return error instanceof Error && 'code' in error && String(error.code).startsWith('CSV_');
}
