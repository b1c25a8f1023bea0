import { sql, type Insertable, type Kysely, type Selectable, type Updateable } from 'kysely';
import { placeKey } from '#lib/model/places/place-name.ts';
import type { WeakSpotTable } from './places-schema.ts';
import type { Database } from './schema.ts';

export type WeakSpotRow = Selectable<WeakSpotTable>;

/** Those that are not deleted, in the order they were entered. */
export function listWeakSpotRows(db: Kysely<Database>, lakeId: string): Promise<WeakSpotRow[]> {
	return all(db, lakeId).where('deleted_at', 'is', null).execute();
}

/** The deleted ones too: routes may still lead over them. */
export function listAllWeakSpotRows(db: Kysely<Database>, lakeId: string): Promise<WeakSpotRow[]> {
	return all(db, lakeId).execute();
}

/** The weak spot of this lake, deleted or not. */
export function findWeakSpotRow(
	db: Kysely<Database>,
	lakeId: string,
	id: string
): Promise<WeakSpotRow | undefined> {
	return db
		.selectFrom('weak_spot')
		.selectAll()
		.where('lake_id', '=', lakeId)
		.where('id', '=', id)
		.executeTakeFirst();
}

export async function insertWeakSpots(
	db: Kysely<Database>,
	rows: readonly Insertable<WeakSpotTable>[]
): Promise<void> {
	if (rows.length > 0) await db.insertInto('weak_spot').values(rows).execute();
}

export async function updateWeakSpotRow(
	db: Kysely<Database>,
	id: string,
	change: Updateable<WeakSpotTable>
): Promise<void> {
	await db.updateTable('weak_spot').set(change).where('id', '=', id).execute();
}

/** The same change, with the place of the readings that are called as the spot was. */
export async function renameWeakSpot(
	db: Kysely<Database>,
	before: WeakSpotRow,
	change: Updateable<WeakSpotTable> & { name: string }
): Promise<void> {
	await db.transaction().execute(async (tx) => {
		await updateWeakSpotRow(tx, before.id, change);
		const readings = await tx
			.selectFrom('reading')
			.select(['id', 'place'])
			.where('lake_id', '=', before.lake_id)
			.where('place', 'is not', null)
			.execute();
		const own = readings.filter(({ place }) => placeKey(place) === placeKey(before.name));
		for (const { id } of own) {
			await tx.updateTable('reading').set({ place: change.name }).where('id', '=', id).execute();
		}
	});
}

function all(db: Kysely<Database>, lakeId: string) {
	return db
		.selectFrom('weak_spot')
		.selectAll()
		.where('lake_id', '=', lakeId)
		.orderBy('created_at')
		.orderBy(sql`rowid`);
}
