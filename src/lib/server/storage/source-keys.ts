import type { Kysely } from 'kysely';
import type { Database } from './schema.ts';

/** Keys lie apart from what is shown, exported and logged; only the fetching of weather reads one. */
export async function readSourceKey(
	db: Kysely<Database>,
	sourceId: string
): Promise<string | null> {
	const row = await db
		.selectFrom('source_key')
		.select('key')
		.where('source_id', '=', sourceId)
		.executeTakeFirst();
	return row?.key ?? null;
}

/** The sources that have a key. */
export async function listKeyedSources(db: Kysely<Database>): Promise<Set<string>> {
	const rows = await db.selectFrom('source_key').select('source_id').execute();
	return new Set(rows.map(({ source_id }) => source_id));
}

/** `null` forgets the key. */
export async function writeSourceKey(
	db: Kysely<Database>,
	sourceId: string,
	key: string | null
): Promise<void> {
	if (key === null) {
		await db.deleteFrom('source_key').where('source_id', '=', sourceId).execute();
		return;
	}
	await db
		.insertInto('source_key')
		.values({ source_id: sourceId, key })
		.onConflict((conflict) => conflict.column('source_id').doUpdateSet({ key }))
		.execute();
}
