import { existsSync, statSync } from 'node:fs';
import { statfs } from 'node:fs/promises';
import { z } from 'zod';
import { openAside, rowsOf } from './backup/open-aside.ts';

export interface TableSize {
	table: string;
	rows: number;
	/** With its indexes. */
	size_B: number;
}

const named = z.array(z.object({ table: z.string(), size_B: z.number() }));
const counted = z.array(z.object({ rows: z.number() }));

/** Rows and bytes of each table, read beside whoever uses the file: in a large one it takes seconds. */
export async function tableSizes(path: string): Promise<TableSize[]> {
	await using database = openAside(path);
	const found = await rowsOf(
		database,
		`SELECT coalesce(m.tbl_name, s.name) AS "table", sum(s.pgsize) AS size_B
			FROM dbstat s LEFT JOIN sqlite_master m ON m.name = s.name
			WHERE s.aggregate = TRUE GROUP BY 1`
	);
	const sizes: TableSize[] = [];
	for (const { table, size_B } of named.parse(found)) {
		const [first] = counted.parse(
			await rowsOf(database, `SELECT count(*) AS rows FROM "${table.replaceAll('"', '""')}"`)
		);
		sizes.push({ table, size_B, rows: first?.rows ?? 0 });
	}
	return sizes;
}

/** Bytes of the database with what has not been written into it yet. */
export function databaseSize_B(path: string): number {
	return [path, `${path}-wal`, `${path}-shm`]
		.filter(existsSync)
		.reduce((sum, each) => sum + statSync(each).size, 0);
}

/** Bytes that this account may still write to the disk of a folder. */
export async function freeRoom_B(folder: string): Promise<number> {
	const { bavail, bsize } = await statfs(folder);
	return bavail * bsize;
}
