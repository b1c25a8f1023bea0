import type { Insertable, Kysely, Selectable } from 'kysely';
import type { Database } from './schema.ts';
import type { FetchStateTable, Part } from './source-schema.ts';

export type FetchState = Selectable<FetchStateTable>;

/** How the last fetches of a lake's source went, by part. */
export async function readFetchStates(
	db: Kysely<Database>,
	lakeSourceId: number
): Promise<Partial<Record<Part, FetchState>>> {
	const rows = await db
		.selectFrom('fetch_state')
		.selectAll()
		.where('lake_source_id', '=', lakeSourceId)
		.execute();
	return Object.fromEntries(rows.map((row) => [row.part, row]));
}

export async function writeFetchState(
	db: Kysely<Database>,
	key: Pick<FetchState, 'lake_source_id' | 'part'>,
	values: Omit<Insertable<FetchStateTable>, 'lake_source_id' | 'part'>
): Promise<void> {
	await db
		.insertInto('fetch_state')
		.values({ ...key, ...values })
		.onConflict((conflict) => conflict.columns(['lake_source_id', 'part']).doUpdateSet(values))
		.execute();
}

/** The next calls of a source are unconditional: what they would answer is wanted again. */
export async function forgetValidatorsOf(db: Kysely<Database>, sourceId: string): Promise<void> {
	const uses = db.selectFrom('lake_source').select('id').where('source_id', '=', sourceId);
	await db
		.updateTable('fetch_state')
		.set({ validators: null, fresh_until_at: null, failures: 0 })
		.where('lake_source_id', 'in', uses)
		.execute();
	await db
		.updateTable('lake_source')
		.set({ next_at: null })
		.where('source_id', '=', sourceId)
		.execute();
}
