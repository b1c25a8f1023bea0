import { sql, type Kysely } from 'kysely';
import type { Database } from './schema.ts';

/** Ids of a site's readings that are not deleted and were begun at that instant or later, the last first. */
export async function listReadingIdsSince(
	db: Kysely<Database>,
	{ lakeId, site, since }: { lakeId: string; site: string; since: Date }
): Promise<string[]> {
	const rows = await db
		.selectFrom('reading')
		.select('id')
		.where('lake_id', '=', lakeId)
		.where('site_id', '=', site)
		.where('deleted_at', 'is', null)
		.where('created_at', '>=', since.toISOString())
		.orderBy('created_at', 'desc')
		.orderBy(sql`rowid`, 'desc')
		.execute();
	return rows.map(({ id }) => id);
}
