import { existsSync, readFileSync } from 'node:fs';
import { basename, dirname } from 'node:path';
import type { z } from 'zod';
import { readTidyTable } from '#lib/server/services/tidy/table.ts';

/** The folder given cannot be scored; the message says which file, line and column, and the remedy. */
export class UnreadableFolder extends Error {
	override name = 'UnreadableFolder';
}

/** The rows of one CSV file of the folder. @throws UnreadableFolder */
export function readTable<Row>(path: string, schema: z.ZodType<Row>, needed: string[]): Row[] {
	const name = `${basename(dirname(path))}/${basename(path)}`;
	if (!existsSync(path)) throw new UnreadableFolder(`${name} is missing`);
	const { rows, problems } = readTidyTable(readFileSync(path, 'utf8'), schema, needed);
	const [first] = problems;
	if (first) {
		const where = first.line > 0 ? ` line ${first.line},` : '';
		throw new UnreadableFolder(`${name}${where} ${first.reason}`);
	}
	return rows.map(({ row }) => row);
}
