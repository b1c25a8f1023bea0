import type { Kysely, Selectable, Updateable } from 'kysely';
import { sql } from 'kysely';
import type { Database } from './schema.ts';
import type { TellingMessageTable } from './telling-schema.ts';

export type MessageRow = Selectable<TellingMessageTable>;

/** The newest first. */
export function listMessages(
	db: Kysely<Database>,
	lakeId: string,
	limit: number
): Promise<MessageRow[]> {
	return db
		.selectFrom('telling_message')
		.selectAll()
		.where('lake_id', '=', lakeId)
		.orderBy('made_at', 'desc')
		.orderBy(sql`rowid`, 'desc')
		.limit(limit)
		.execute();
}

/** Those that tell of readings. */
export function listReadingMessages(db: Kysely<Database>, lakeId: string): Promise<MessageRow[]> {
	return db
		.selectFrom('telling_message')
		.selectAll()
		.where('lake_id', '=', lakeId)
		.where('reading_id', 'is not', null)
		.execute();
}

export async function insertMessages(
	db: Kysely<Database>,
	rows: readonly MessageRow[]
): Promise<void> {
	if (rows.length > 0)
		await db
			.insertInto('telling_message')
			.values([...rows])
			.execute();
}

export async function updateMessage(
	db: Kysely<Database>,
	id: string,
	change: Updateable<TellingMessageTable>
): Promise<void> {
	await db.updateTable('telling_message').set(change).where('id', '=', id).execute();
}

export async function deleteMessage(db: Kysely<Database>, id: string): Promise<void> {
	await db.deleteFrom('telling_message').where('id', '=', id).execute();
}

/** Forgets what was told before an instant. */
export async function deleteMessagesBefore(
	db: Kysely<Database>,
	lakeId: string,
	before: string
): Promise<void> {
	await db
		.deleteFrom('telling_message')
		.where('lake_id', '=', lakeId)
		.where('made_at', '<', before)
		.execute();
}
