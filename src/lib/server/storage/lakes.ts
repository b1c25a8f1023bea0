import type { Insertable, Kysely, NotNull, Selectable, Updateable } from 'kysely';
import type { Database, LakeTable } from './schema.ts';

export type LakeRow = Selectable<LakeTable>;

/** Lakes that are not deleted, by name. */
export function listLakeRows(db: Kysely<Database>): Promise<LakeRow[]> {
	return db
		.selectFrom('lake')
		.selectAll()
		.where('deleted_at', 'is', null)
		.orderBy('name')
		.orderBy('id')
		.execute();
}

/** Lakes that are deleted, the last one first. */
export function listDeletedLakeRows(
	db: Kysely<Database>
): Promise<(Pick<LakeRow, 'id' | 'name'> & { deleted_at: string })[]> {
	return db
		.selectFrom('lake')
		.select(['id', 'name', 'deleted_at'])
		.where('deleted_at', 'is not', null)
		.orderBy('deleted_at', 'desc')
		.$narrowType<{ deleted_at: NotNull }>()
		.execute();
}

/** The lake, deleted or not. */
export function findLakeRow(db: Kysely<Database>, id: string): Promise<LakeRow | undefined> {
	return db.selectFrom('lake').selectAll().where('id', '=', id).executeTakeFirst();
}

/** Makes the lake with its one site, `main`. */
export async function insertLake(db: Kysely<Database>, row: Insertable<LakeTable>): Promise<void> {
	await db.transaction().execute(async (tx) => {
		await tx.insertInto('lake').values(row).execute();
		await tx.insertInto('site').values({ lake_id: row.id, id: 'main', name: 'Main' }).execute();
	});
}

export async function updateLakeRow(
	db: Kysely<Database>,
	id: string,
	change: Updateable<LakeTable>
): Promise<void> {
	await db.updateTable('lake').set(change).where('id', '=', id).execute();
}

export async function countLakeRows(db: Kysely<Database>): Promise<number> {
	const { count } = await db
		.selectFrom('lake')
		.select((eb) => eb.fn.countAll<number>().as('count'))
		.executeTakeFirstOrThrow();
	return count;
}

/** Removes invented lakes whose weather never came. */
export async function deleteUnfinishedInvented(db: Kysely<Database>): Promise<void> {
	await db
		.deleteFrom('lake')
		.where('is_invented', '=', 1)
		.where('weather_revision', '=', 0)
		.execute();
}

/** Whether there is one of those. */
export async function hasUnfinishedInvented(db: Kysely<Database>): Promise<boolean> {
	const row = await db
		.selectFrom('lake')
		.select('id')
		.where('is_invented', '=', 1)
		.where('weather_revision', '=', 0)
		.executeTakeFirst();
	return row !== undefined;
}
