import type { Insertable, Kysely, NotNull, Selectable, Updateable } from 'kysely';
import type { Database, SiteTable } from './schema.ts';

export type SiteRow = Selectable<SiteTable>;

/** A lake's sites that are not deleted: `main` first, then by name. */
export function listSiteRows(db: Kysely<Database>, lakeId: string): Promise<SiteRow[]> {
	return db
		.selectFrom('site')
		.selectAll()
		.where('lake_id', '=', lakeId)
		.where('deleted_at', 'is', null)
		.orderBy((eb) => eb('id', '!=', 'main'))
		.orderBy('name')
		.orderBy('id')
		.execute();
}

/** A lake's deleted sites, the last one first. */
export function listDeletedSiteRows(
	db: Kysely<Database>,
	lakeId: string
): Promise<(SiteRow & { deleted_at: string })[]> {
	return db
		.selectFrom('site')
		.selectAll()
		.where('lake_id', '=', lakeId)
		.where('deleted_at', 'is not', null)
		.orderBy('deleted_at', 'desc')
		.$narrowType<{ deleted_at: NotNull }>()
		.execute();
}

/** The site, deleted or not. */
export function findSiteRow(
	db: Kysely<Database>,
	lakeId: string,
	id: string
): Promise<SiteRow | undefined> {
	return db
		.selectFrom('site')
		.selectAll()
		.where('lake_id', '=', lakeId)
		.where('id', '=', id)
		.executeTakeFirst();
}

export async function insertSite(db: Kysely<Database>, row: Insertable<SiteTable>): Promise<void> {
	await db.insertInto('site').values(row).execute();
}

export async function updateSiteRow(
	db: Kysely<Database>,
	lakeId: string,
	id: string,
	change: Updateable<SiteTable>
): Promise<void> {
	await db
		.updateTable('site')
		.set(change)
		.where('lake_id', '=', lakeId)
		.where('id', '=', id)
		.execute();
}
