import type { Kysely } from 'kysely';
import type { Database } from './schema.ts';

export async function listHiddenLoads(db: Kysely<Database>, lakeId: string): Promise<string[]> {
	const rows = await db
		.selectFrom('hidden_load')
		.select('load_id')
		.where('lake_id', '=', lakeId)
		.execute();
	return rows.map(({ load_id }) => load_id);
}

export async function replaceHiddenLoads(
	db: Kysely<Database>,
	lakeId: string,
	ids: readonly string[]
): Promise<void> {
	await db.transaction().execute(async (tx) => {
		await tx.deleteFrom('hidden_load').where('lake_id', '=', lakeId).execute();
		if (ids.length === 0) return;
		const rows = ids.map((load_id) => ({ lake_id: lakeId, load_id }));
		await tx.insertInto('hidden_load').values(rows).execute();
	});
}
