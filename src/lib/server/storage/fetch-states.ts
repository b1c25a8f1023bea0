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

/** The next call of these is unconditional: what they would answer is wanted again. */
export async function forgetValidators(
	db: Kysely<Database>,
	lakeSourceIds: readonly number[]
): Promise<void> {
	if (lakeSourceIds.length === 0) return;
	await db
		.updateTable('fetch_state')
		.set({ validators: null, fresh_until_at: null })
		.where('lake_source_id', 'in', lakeSourceIds)
		.execute();
}
