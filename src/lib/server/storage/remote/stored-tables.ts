import type { HttpStream } from '@libsql/hrana-client';
import { STAGED_TABLES } from '../staging-tables.ts';

/** A table that is copied row by row, in the order of its key. */
export interface StoredTable {
	name: string;
	columns: string[];
	/** What its rows are in order by. */
	key: string[];
}

export interface StoredSchema {
	tables: StoredTable[];
	/** What makes the tables. */
	before: string[];
	/** Indexes, and triggers that are not to see the rows come in. */
	after: string[];
}

/** SQLite's own, and the server's. */
const OF_OTHERS = `name LIKE 'sqlite\\_%' ESCAPE '\\' OR name LIKE 'libsql\\_%' ESCAPE '\\'`;

/** What a database on a server is made of. What is staged there lasts no longer than an import. */
export async function readSchema(stream: HttpStream): Promise<StoredSchema> {
	const { rows } = await stream.query(`SELECT type, name, tbl_name, sql FROM sqlite_master
		WHERE sql IS NOT NULL AND NOT (${OF_OTHERS}) ORDER BY rowid`);
	const parts = rows.filter((row) => !STAGED_TABLES.includes(String(row['tbl_name'])));
	const tables = parts.filter((row) => row['type'] === 'table');
	const statements = (of: typeof parts) => of.map((row) => String(row['sql']));
	return {
		tables: await Promise.all(tables.map((row) => readTable(stream, String(row['name'])))),
		before: statements(tables),
		after: statements(parts.filter((row) => row['type'] !== 'table'))
	};
}

async function readTable(stream: HttpStream, name: string): Promise<StoredTable> {
	const { rows } = await stream.query([
		`SELECT name, pk, (SELECT wr FROM pragma_table_list(?1) WHERE schema = 'main') AS wr
		FROM pragma_table_info(?1)`,
		[name]
	]);
	const names = (of: typeof rows) => of.map((row) => String(row['name']));
	const keyed = rows.filter((row) => Number(row['pk']) > 0);
	const inOrder = keyed.toSorted((a, b) => Number(a['pk']) - Number(b['pk']));
	const hasRowid = Number(rows[0]?.['wr']) === 0;
	return { name, columns: names(rows), key: hasRowid ? ['rowid'] : names(inOrder) };
}

/** Any table that is there, by its name; `null` in a database that is empty. */
export async function anyTable(stream: HttpStream): Promise<string | null> {
	const { rows } = await stream.query(
		`SELECT name FROM sqlite_master WHERE NOT (${OF_OTHERS}) LIMIT 1`
	);
	return rows[0] ? String(rows[0]['name']) : null;
}

export function quoted(name: string): string {
	return `"${name.replaceAll('"', '""')}"`;
}
