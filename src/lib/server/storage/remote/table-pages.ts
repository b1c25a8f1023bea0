import type { HttpStream, InValue, ResponseError, Value } from '@libsql/hrana-client';
import { quoted, type StoredTable } from './stored-tables.ts';

const MOST_ROWS = 500;

/** A server's own limit, of which it says no more than that it was passed. */
const TOO_LARGE = 'RESPONSE_TOO_LARGE';

/** The rows of a table in the order of its key, so many at a time as the server answers at once. */
export async function* pagesOf(stream: HttpStream, table: StoredTable): AsyncGenerator<Value[][]> {
	let limit = MOST_ROWS;
	let last: Value[] | null = null;
	for (;;) {
		const page: Value[][] | null = await readPage(stream, table, last, limit);
		if (page === null) {
			limit = Math.ceil(limit / 2);
			continue;
		}
		const width = table.key.length;
		if (page.length > 0) yield page.map((row) => row.slice(width));
		if (page.length < limit) return;
		last = page.at(-1)?.slice(0, width) ?? null;
	}
}

/** Rows with their key before them; `null` where they are too many for one answer. */
async function readPage(
	stream: HttpStream,
	{ name, key, columns }: StoredTable,
	last: Value[] | null,
	limit: number
): Promise<Value[][] | null> {
	const keys = key.map(quoted).join(', ');
	const after = last === null ? '' : `WHERE (${keys}) > (${last.map(() => '?').join(', ')})`;
	const statement = `SELECT ${keys}, ${columns.map(quoted).join(', ')} FROM ${quoted(name)}
		${after} ORDER BY ${keys} LIMIT ${limit}`;
	const args: InValue[] = last ?? [];
	try {
		const { rows } = await stream.query([statement, args]);
		return rows.map((row) => Array.from(row));
	} catch (cause) {
		if (limit > 1 && (cause as ResponseError).code === TOO_LARGE) return null;
		throw cause;
	}
}
