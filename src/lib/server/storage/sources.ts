import type { Insertable, Kysely, Selectable, Updateable } from 'kysely';
import type { Database } from './schema.ts';
import type { SourceTable } from './source-schema.ts';

export type SourceRow = Selectable<SourceTable>;

/** Sources that are not deleted, by name. */
export function listSourceRows(db: Kysely<Database>): Promise<SourceRow[]> {
	return db
		.selectFrom('source')
		.selectAll()
		.where('deleted_at', 'is', null)
		.orderBy('name')
		.orderBy('id')
		.execute();
}

/** The source, deleted or not. */
export function findSourceRow(db: Kysely<Database>, id: string): Promise<SourceRow | undefined> {
	return db.selectFrom('source').selectAll().where('id', '=', id).executeTakeFirst();
}

/** Makes the source with an empty state. */
export async function insertSource(
	db: Kysely<Database>,
	row: Insertable<SourceTable>
): Promise<void> {
	await db.transaction().execute(async (tx) => {
		await tx.insertInto('source').values(row).execute();
		await tx.insertInto('source_state').values({ source_id: row.id }).execute();
	});
}

export async function updateSourceRow(
	db: Kysely<Database>,
	id: string,
	change: Updateable<SourceTable>
): Promise<void> {
	if (Object.keys(change).length === 0) return;
	await db.updateTable('source').set(change).where('id', '=', id).execute();
}
