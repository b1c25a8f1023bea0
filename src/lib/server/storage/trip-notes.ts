import type { Kysely } from 'kysely';
import type { TripNoteTable } from './places-schema.ts';
import type { Database } from './schema.ts';

export type TripNoteRow = TripNoteTable;

export function findTripNote(
	db: Kysely<Database>,
	lakeId: string
): Promise<TripNoteRow | undefined> {
	return db.selectFrom('trip_note').selectAll().where('lake_id', '=', lakeId).executeTakeFirst();
}

/** Stores what is given in place of what was kept; nothing at all leaves no row. */
export async function replaceTripNote(db: Kysely<Database>, note: TripNoteRow): Promise<void> {
	const { lake_id, ...kept } = note;
	await db.transaction().execute(async (tx) => {
		await tx.deleteFrom('trip_note').where('lake_id', '=', lake_id).execute();
		if (Object.values(kept).some((text) => text !== null))
			await tx.insertInto('trip_note').values(note).execute();
	});
}
