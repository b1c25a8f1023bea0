import AsideFile from 'libsql/promise';
import { z } from 'zod';

/** A connection of its own whose work is done outside the thread that answers requests. */
export interface AsideDatabase extends AsyncDisposable {
	exec(sql: string): Promise<unknown>;
	prepare(sql: string): Promise<{ all(): Promise<unknown> }>;
}

/** Opens a file beside whoever else has it open. A file that is not there is made: ask before. */
export function openAside(path: string): AsideDatabase {
	const file = new AsideFile(path, {});
	return {
		exec: (sql) => file.exec(sql),
		prepare: (sql) => file.prepare(sql),
		async [Symbol.asyncDispose]() {
			file.close();
		}
	};
}

const rows = z.array(z.record(z.string(), z.unknown()));

export async function rowsOf(database: AsideDatabase, sql: string) {
	const statement = await database.prepare(sql);
	return rows.parse(await statement.all());
}
