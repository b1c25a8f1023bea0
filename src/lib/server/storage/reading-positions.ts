import type { Kysely } from 'kysely';
import type { Database } from './schema.ts';

export interface PositionRow {
	latitude: number;
	longitude: number;
}

/** Where a reading was taken; `null` where nobody stored it. */
export async function findReadingPosition(
	db: Kysely<Database>,
	id: string
): Promise<PositionRow | null> {
	const row = await db
		.selectFrom('reading')
		.select(['latitude', 'longitude'])
		.where('id', '=', id)
		.executeTakeFirst();
	if (!row || row.latitude === null || row.longitude === null) return null;
	return { latitude: row.latitude, longitude: row.longitude };
}

/** `null` forgets it. */
export async function writeReadingPosition(
	db: Kysely<Database>,
	id: string,
	position: PositionRow | null
): Promise<void> {
	const cells = position ?? { latitude: null, longitude: null };
	await db.updateTable('reading').set(cells).where('id', '=', id).execute();
}
