import { sql, type Kysely } from 'kysely';
import type { Database } from './schema.ts';

interface Deleted {
	/** A table with the columns `id` and `deleted_at`, or `winter`. */
	what: string;
	lakeId: string;
	id: string;
	site: string | null;
}

const WITH_ID = new Set(['reading', 'weak_spot', 'route', 'own_load', 'site', 'source']);

/** When it was deleted; `null` where it is not, or is no more. */
export async function readDeletedAt(
	db: Kysely<Database>,
	{ what, lakeId, id, site }: Deleted
): Promise<string | null> {
	if (what !== 'winter' && !WITH_ID.has(what)) return null;
	const isOf = what === 'source' ? sql`1` : sql`lake_id = ${lakeId}`;
	const is = what === 'winter' ? sql`winter = ${id} AND site_id = ${site}` : sql`id = ${id}`;
	const { rows } = await sql<{ deleted_at: string | null }>`
		SELECT deleted_at FROM ${sql.table(what)} WHERE ${isOf} AND ${is}`.execute(db);
	return rows[0]?.deleted_at ?? null;
}

/**
 * Lets go for good what was deleted before an instant: lakes with all that belongs to them, winters,
 * readings, and sources with what they brought. Invented lakes stay as deleted, or the next start
 * would make them again.
 */
export async function deleteForGood(db: Kysely<Database>, before: string): Promise<number> {
	return db.transaction().execute(async (tx) => {
		const old = ['reading', 'source', 'winter'] as const;
		let gone = 0n;
		for (const table of old) {
			const done = await tx.deleteFrom(table).where('deleted_at', '<', before).executeTakeFirst();
			gone += done.numDeletedRows;
		}
		const lakes = await tx
			.deleteFrom('lake')
			.where('deleted_at', '<', before)
			.where('is_invented', '=', 0)
			.executeTakeFirst();
		return Number(gone + lakes.numDeletedRows);
	});
}
