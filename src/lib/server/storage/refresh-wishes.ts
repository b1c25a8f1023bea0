import type { Insertable, Kysely, Selectable } from 'kysely';
import type { Database } from './schema.ts';
import type { RefreshWishTable } from './side-by-side-schema.ts';

export type RefreshWishRow = Selectable<RefreshWishTable>;

/** Wishes anew what may have been wished before. */
export async function writeWish(
	db: Kysely<Database>,
	row: Insertable<RefreshWishTable>
): Promise<void> {
	const { lake_source_id: _, wish: __, ...values } = row;
	await db
		.insertInto('refresh_wish')
		.values(row)
		.onConflict((conflict) => conflict.columns(['lake_source_id', 'wish']).doUpdateSet(values))
		.execute();
}

/** What is still to be done, the oldest first, with the use that it is about. */
export function listOpenWishes(
	db: Kysely<Database>
): Promise<(RefreshWishRow & { source_id: string; lake_id: string })[]> {
	return db
		.selectFrom('refresh_wish')
		.innerJoin('lake_source', 'lake_source.id', 'lake_source_id')
		.selectAll('refresh_wish')
		.select(['source_id', 'lake_id'])
		.where('is_over', '=', 0)
		.orderBy('wished_at')
		.execute();
}

/** The last wish about a use, whichever of the two. */
export function findLastWish(
	db: Kysely<Database>,
	useId: number
): Promise<RefreshWishRow | undefined> {
	return db
		.selectFrom('refresh_wish')
		.selectAll()
		.where('lake_source_id', '=', useId)
		.orderBy('wished_at', 'desc')
		.limit(1)
		.executeTakeFirst();
}

/** Unless it has been wished anew meanwhile. */
export async function updateWish(
	db: Kysely<Database>,
	{ lake_source_id, wish, wished_at }: RefreshWishRow,
	change: Pick<RefreshWishRow, 'progress' | 'is_over'>
): Promise<void> {
	await db
		.updateTable('refresh_wish')
		.set(change)
		.where('lake_source_id', '=', lake_source_id)
		.where('wish', '=', wish)
		.where('wished_at', '=', wished_at)
		.execute();
}
