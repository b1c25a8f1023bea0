import type { Insertable, Kysely, Selectable, Updateable } from 'kysely';
import type { Database } from './schema.ts';
import type { FeedKind, TellingFeedTable, TellingTable } from './telling-schema.ts';

export type TellingRow = Selectable<TellingTable>;
export type FeedRow = Selectable<TellingFeedTable>;

export function findTelling(db: Kysely<Database>, lakeId: string): Promise<TellingRow | undefined> {
	return db.selectFrom('telling').selectAll().where('lake_id', '=', lakeId).executeTakeFirst();
}

/** Lakes that are not deleted and have a way switched on. */
export function listTellingRows(db: Kysely<Database>): Promise<TellingRow[]> {
	return db
		.selectFrom('telling')
		.innerJoin('lake', 'lake.id', 'telling.lake_id')
		.selectAll('telling')
		.where('telling.since_at', 'is not', null)
		.where('lake.deleted_at', 'is', null)
		.orderBy('telling.lake_id')
		.execute();
}

/** Does nothing where the lake has a row. */
export async function insertTelling(
	db: Kysely<Database>,
	row: Insertable<TellingTable>
): Promise<void> {
	await db
		.insertInto('telling')
		.values(row)
		.onConflict((conflict) => conflict.column('lake_id').doNothing())
		.execute();
}

export async function updateTelling(
	db: Kysely<Database>,
	lakeId: string,
	change: Updateable<TellingTable>
): Promise<void> {
	await db.updateTable('telling').set(change).where('lake_id', '=', lakeId).execute();
}

export function listFeeds(db: Kysely<Database>, lakeId: string): Promise<FeedRow[]> {
	return db.selectFrom('telling_feed').selectAll().where('lake_id', '=', lakeId).execute();
}

export function findFeed(
	db: Kysely<Database>,
	kind: FeedKind,
	secretHash: string
): Promise<FeedRow | undefined> {
	return db
		.selectFrom('telling_feed')
		.selectAll()
		.where('kind', '=', kind)
		.where('secret_hash', '=', secretHash)
		.executeTakeFirst();
}

/** A feed made anew has another secret, and the one before leads nowhere. */
export async function writeFeed(db: Kysely<Database>, row: FeedRow): Promise<void> {
	const { lake_id: _, kind: __, ...values } = row;
	await db
		.insertInto('telling_feed')
		.values(row)
		.onConflict((conflict) => conflict.columns(['lake_id', 'kind']).doUpdateSet(values))
		.execute();
}

export async function deleteFeed(
	db: Kysely<Database>,
	lakeId: string,
	kind: FeedKind
): Promise<void> {
	await db
		.deleteFrom('telling_feed')
		.where('lake_id', '=', lakeId)
		.where('kind', '=', kind)
		.execute();
}

export async function noteFetched(
	db: Kysely<Database>,
	{ lake_id, kind }: FeedRow,
	fetched_at: string
): Promise<void> {
	await db
		.updateTable('telling_feed')
		.set({ fetched_at })
		.where('lake_id', '=', lake_id)
		.where('kind', '=', kind)
		.execute();
}
