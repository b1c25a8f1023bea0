import { sql, type Insertable, type Kysely, type Selectable } from 'kysely';
import type { Database, OwnLoadTable } from './schema.ts';

export type OwnLoadRow = Selectable<OwnLoadTable>;
export type OwnLoadChange = Omit<Insertable<OwnLoadTable>, 'id' | 'lake_id' | 'created_at'>;

/** Loads that are not deleted, in the order they were entered. */
export function listOwnLoadRows(db: Kysely<Database>, lakeId: string): Promise<OwnLoadRow[]> {
	return db
		.selectFrom('own_load')
		.selectAll()
		.where('lake_id', '=', lakeId)
		.where('deleted_at', 'is', null)
		.orderBy('created_at')
		.orderBy(sql`rowid`)
		.execute();
}

/** The load of this lake, deleted or not. */
export function findOwnLoadRow(
	db: Kysely<Database>,
	lakeId: string,
	id: string
): Promise<OwnLoadRow | undefined> {
	return db
		.selectFrom('own_load')
		.selectAll()
		.where('lake_id', '=', lakeId)
		.where('id', '=', id)
		.executeTakeFirst();
}

export async function insertOwnLoad(
	db: Kysely<Database>,
	row: Insertable<OwnLoadTable>
): Promise<void> {
	await db.insertInto('own_load').values(row).execute();
}

export async function updateOwnLoadRow(
	db: Kysely<Database>,
	id: string,
	change: Partial<OwnLoadChange>
): Promise<void> {
	await db.updateTable('own_load').set(change).where('id', '=', id).execute();
}
