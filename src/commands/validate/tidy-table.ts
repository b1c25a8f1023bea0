import { existsSync, readFileSync } from 'node:fs';
import { basename, dirname } from 'node:path';
import { CsvError, parse } from 'csv-parse/sync';
import { z } from 'zod';

/** The folder given cannot be scored; the message says which file, line and column, and the remedy. */
export class UnreadableFolder extends Error {
	override name = 'UnreadableFolder';
}

const parsedFile = z.array(
	z.object({ info: z.object({ lines: z.number() }), record: z.record(z.string(), z.string()) })
);

/**
 * The rows of one CSV file, each checked by `schema`. Columns that the schema doesn't name are
 * ignored, columns that it names as optional may be absent.
 * @throws UnreadableFolder
 */
export function readTable<Row>(path: string, schema: z.ZodType<Row>, needed: string[]): Row[] {
	const name = `${basename(dirname(path))}/${basename(path)}`;
	if (!existsSync(path)) throw new UnreadableFolder(`${name} is missing`);
	const rows = parsedFile.parse(parseCsv(path, name));
	requireColumns(name, rows[0]?.record, needed);
	return rows.map(({ info, record }) => {
		const row = schema.safeParse(record);
		if (row.success) return row.data;
		const issue = row.error.issues[0];
		const column = issue?.path.join('.') ?? '';
		throw new UnreadableFolder(`${name} line ${info.lines}, column ${column}: ${issue?.message}`);
	});
}

function parseCsv(path: string, name: string): unknown {
	try {
		return parse(readFileSync(path, 'utf8'), {
			bom: true,
			columns: (header: string[]) => header.map((cell) => cell.trim()),
			info: true,
			skip_empty_lines: true,
			max_record_size: 65_536
		});
	} catch (error) {
		if (!(error instanceof CsvError)) throw error;
		throw new UnreadableFolder(`${name} is not a comma-separated table: ${error.message}`, {
			cause: error
		});
	}
}

function requireColumns(name: string, first: Record<string, string> | undefined, needed: string[]) {
	if (!first) throw new UnreadableFolder(`${name} has no rows`);
	const missing = needed.filter((column) => !(column in first));
	if (missing.length > 0)
		throw new UnreadableFolder(`${name} has no column ${missing.join(', ')} in its first line`);
}
