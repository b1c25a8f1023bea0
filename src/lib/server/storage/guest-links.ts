import type { Kysely, Selectable } from 'kysely';
import type { GuestLinkTable } from './access-schema.ts';
import type { Database } from './schema.ts';

export type GuestLinkRow = Selectable<GuestLinkTable>;

/** By lake, the oldest first. */
export async function listGuestLinks(db: Kysely<Database>): Promise<GuestLinkRow[]> {
	return db.selectFrom('guest_link').selectAll().orderBy('lake_id').orderBy('made_at').execute();
}

export async function insertGuestLink(db: Kysely<Database>, link: GuestLinkRow): Promise<void> {
	await db.insertInto('guest_link').values(link).execute();
}

export async function findGuestLink(
	db: Kysely<Database>,
	secretHash: string
): Promise<GuestLinkRow | undefined> {
	return db
		.selectFrom('guest_link')
		.selectAll()
		.where('secret_hash', '=', secretHash)
		.executeTakeFirst();
}

export async function noteOpened(db: Kysely<Database>, id: string, at: string): Promise<void> {
	await db.updateTable('guest_link').set({ opened_at: at }).where('id', '=', id).execute();
}

/** Whoever came in by it is out. */
export async function deleteGuestLink(db: Kysely<Database>, id: string): Promise<void> {
	await db.deleteFrom('guest_link').where('id', '=', id).execute();
}
