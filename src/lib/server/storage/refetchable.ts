import { sql, type Kysely } from 'kysely';
import { isRemote } from './remote/remote-dialect.ts';
import type { Database } from './schema.ts';

/**
 * Writes that need not outlive a power cut, as they can be fetched or made again: the disk is not
 * waited for. They stay whole and in their order, and what people type waits for the disk as ever,
 * for all that was written before it as well. Nothing but the database may be awaited in `work`.
 */
export function refetchable<Result>(
	db: Kysely<Database>,
	work: (connection: Kysely<Database>) => Promise<Result>
): Promise<Result> {
	if (isRemote(db)) return work(db);
	return db.connection().execute(async (connection) => {
		await sql`PRAGMA synchronous = NORMAL`.execute(connection);
		try {
			return await work(connection);
		} finally {
			await sql`PRAGMA synchronous = FULL`.execute(connection);
		}
	});
}
