import type { Kysely, Transaction } from 'kysely';
import type { Database } from './schema.ts';

/** What an answer is an answer to. */
export interface AskedOf {
	useId: number;
	/** The source's configuration as it was stored when it was asked. */
	config: string;
	station: string | null;
	latitude: number;
	longitude: number;
}

/**
 * Stores what belongs to an answer, in one transaction: or `outdated` and nothing of it, where source,
 * station or place have changed while it was asked. Otherwise what a person has corrected would come back.
 */
export function storeAsAsked<Result>(
	db: Kysely<Database>,
	asked: AskedOf,
	work: (tx: Transaction<Database>) => Promise<Result>
): Promise<Result | 'outdated'> {
	return db
		.transaction()
		.execute(async (tx) => ((await isAsAsked(tx, asked)) ? work(tx) : 'outdated'));
}

async function isAsAsked(tx: Transaction<Database>, asked: AskedOf): Promise<boolean> {
	const row = await tx
		.selectFrom('lake_source')
		.innerJoin('source', 'source.id', 'lake_source.source_id')
		.innerJoin('lake', 'lake.id', 'lake_source.lake_id')
		.select(['config', 'station', 'latitude', 'longitude'])
		.where('lake_source.id', '=', asked.useId)
		.executeTakeFirst();
	return (
		row?.config === asked.config &&
		row.station === asked.station &&
		row.latitude === asked.latitude &&
		row.longitude === asked.longitude
	);
}
