import type { z } from 'zod';
import type { FileProblem, TidyFiles } from './folder.ts';
import { readTidyTable, type TidyTable } from './table.ts';

/** More would help nobody. */
const MOST_LISTED = 500;
/** 160 years of days. */
const MOST_ROWS = 60_000;

/** The files of a folder while they are read, and what is wrong with them. */
export class Ledger {
	readonly problems: FileProblem[] = [];
	readonly leftOut: FileProblem[] = [];
	readonly #files: TidyFiles;
	readonly #tables = new Map<string, TidyTable<unknown>['rows']>();

	constructor(files: TidyFiles) {
		this.#files = files;
	}

	get findings() {
		return { problems: this.problems, leftOut: this.leftOut };
	}

	has(file: string): boolean {
		return this.#files.has(file);
	}

	text(file: string): string {
		return this.#files.get(file) ?? '';
	}

	/**
	 * The good rows of a table that has to be there; it may have no more than its header. A file is
	 * always read with the same schema, and what is wrong with it is noted once.
	 */
	table<Row>(file: string, schema: z.ZodType<Row>, needed: readonly string[]) {
		const known = this.#tables.get(file) ?? this.#read(file, schema, needed);
		this.#tables.set(file, known);
		return known as TidyTable<Row>['rows'];
	}

	#read<Row>(
		file: string,
		schema: z.ZodType<Row>,
		needed: readonly string[]
	): TidyTable<Row>['rows'] {
		const text = this.#files.get(file);
		if (text === undefined) {
			this.refuse(file, 0, 'is missing');
			return [];
		}
		const { rows, problems } = readTidyTable(text, schema, needed);
		if (rows.length > MOST_ROWS) this.refuse(file, 0, `has more than ${MOST_ROWS} rows`);
		const isEmpty = problems[0]?.reason === 'has no rows' && text.trim() !== '';
		for (const { line, reason } of isEmpty ? [] : problems) this.refuse(file, line, reason);
		return rows;
	}

	refuse(file: string, line: number, reason: string): void {
		if (this.problems.length < MOST_LISTED) this.problems.push({ file, line, reason });
	}

	leave(file: string, line: number, reason: string): void {
		if (this.leftOut.length < MOST_LISTED) this.leftOut.push({ file, line, reason });
	}
}
