import { sql, type Kysely, type Transaction } from 'kysely';
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

/** What goes by itself, in an order in which nothing is kept by what goes after it. */
const GOES = ['reading', 'source', 'winter', 'own_load', 'route', 'site'] as const;

/**
 * Lets go for good what was deleted before an instant, with all that belongs to it: lakes, sites,
 * winters, readings, loads, routes, weak spots, and sources with what they brought. A weak spot stays
 * while a route goes over it, which shows the gap. Invented lakes stay as deleted, or the next start
 * would make them again.
 */
export async function deleteForGood(db: Kysely<Database>, before: string): Promise<number> {
	return db.transaction().execute(async (tx) => {
		let gone = 0n;
		await forgetLoads(tx, before);
		for (const table of GOES) {
			const done = await tx.deleteFrom(table).where('deleted_at', '<', before).executeTakeFirst();
			gone += done.numDeletedRows;
		}
		const spots = await tx
			.deleteFrom('weak_spot')
			.where('deleted_at', '<', before)
			.where((eb) =>
				eb.not(
					eb.exists(
						eb
							.selectFrom('route_point')
							.select('route_id')
							.whereRef('route_point.spot_id', '=', 'weak_spot.id')
					)
				)
			)
			.executeTakeFirst();
		const lakes = await tx
			.deleteFrom('lake')
			.where('deleted_at', '<', before)
			.where('is_invented', '=', 0)
			.executeTakeFirst();
		return Number(gone + spots.numDeletedRows + lakes.numDeletedRows);
	});
}

/** What was set of loads that go: it names no row of theirs, as standard loads have none. */
async function forgetLoads(tx: Transaction<Database>, before: string): Promise<void> {
	for (const table of ['hidden_load', 'load_lead'] as const) {
		await tx
			.deleteFrom(table)
			.where('load_id', 'in', (eb) =>
				eb.selectFrom('own_load').select('id').where('deleted_at', '<', before)
			)
			.execute();
	}
}
