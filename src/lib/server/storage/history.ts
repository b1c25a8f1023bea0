import { sql, type Kysely, type Selectable, type Transaction } from 'kysely';
import type { HistoryTable } from './history-schema.ts';
import type { Database } from './schema.ts';

export type HistoryRow = Selectable<HistoryTable>;

/**
 * What was changed of a lake and of the sources it uses, the newest first: whole units, as many as
 * `units`, of those before one.
 */
export async function listHistoryRows(
	db: Kysely<Database>,
	lakeId: string,
	{ before, units }: { before: number | null; units: number }
): Promise<HistoryRow[]> {
	const ofLake = sql<boolean>`(lake_id = ${lakeId} OR (lake_id IS NULL AND
		coalesce(key ->> 'id', key ->> 'source_id') IN
			(SELECT source_id FROM lake_source WHERE lake_id = ${lakeId})))`;
	const chosen = db
		.selectFrom('history')
		.select('unit')
		.distinct()
		.where(ofLake)
		.$if(before !== null, (query) => query.where('unit', '<', before ?? 0))
		.orderBy('unit', 'desc')
		.limit(units);
	return db
		.selectFrom('history')
		.selectAll()
		.where(ofLake)
		.where('unit', 'in', chosen)
		.orderBy('unit', 'desc')
		.orderBy('id')
		.execute();
}

/** A file of weather that was taken in, as one change of whoever writes. */
export async function recordImport(
	tx: Transaction<Database>,
	lakeId: string,
	counts: { days: number; hours: number; from: string | null; to: string | null }
): Promise<void> {
	await recordCounts(tx, 'weather', lakeId, counts);
}

/** What follows in this transaction is not on record row by row; it is told as one change instead. */
export async function recordAsOne(
	tx: Transaction<Database>,
	what: string,
	lakeId: string,
	counts: Readonly<Record<string, number | string>>,
	work: () => Promise<void>
): Promise<void> {
	const writer = await tx.selectFrom('writer').selectAll().executeTakeFirst();
	await tx.deleteFrom('writer').execute();
	await work();
	if (!writer) return;
	await tx.insertInto('writer').values(writer).execute();
	await recordCounts(tx, what, lakeId, counts);
}

async function recordCounts(
	tx: Transaction<Database>,
	what: string,
	lakeId: string,
	counts: Readonly<Record<string, number | string | null>>
): Promise<void> {
	await sql`INSERT INTO history (unit, lake_id, at, who, what, key, after)
		SELECT unit, ${lakeId}, at, who, ${what}, '{}', ${JSON.stringify(counts)}
		FROM writer`.execute(tx);
}
