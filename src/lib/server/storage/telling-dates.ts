import type { Insertable, Kysely, Selectable, Updateable } from 'kysely';
import type { Database } from './schema.ts';
import type { TellingDateTable } from './telling-schema.ts';

export type DateRow = Selectable<TellingDateTable>;

/** All that a lake's calendar ever had, by day; those that are not shown as well. */
export function listDateRows(db: Kysely<Database>, lakeId: string): Promise<DateRow[]> {
	return db
		.selectFrom('telling_date')
		.selectAll()
		.where('lake_id', '=', lakeId)
		.orderBy('from_day')
		.orderBy('key')
		.execute();
}

export async function insertDateRow(
	db: Kysely<Database>,
	row: Insertable<TellingDateTable>
): Promise<void> {
	await db.insertInto('telling_date').values(row).execute();
}

export async function updateDateRow(
	db: Kysely<Database>,
	{ lake_id, key }: Pick<DateRow, 'lake_id' | 'key'>,
	change: Updateable<TellingDateTable>
): Promise<void> {
	await db
		.updateTable('telling_date')
		.set(change)
		.where('lake_id', '=', lake_id)
		.where('key', '=', key)
		.execute();
}
