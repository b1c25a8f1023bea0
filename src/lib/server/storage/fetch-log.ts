import type { Insertable, Kysely, Selectable } from 'kysely';
import type { Database } from './schema.ts';
import type { FetchLogTable } from './source-schema.ts';

export type FetchLogRow = Selectable<FetchLogTable>;

/** Entries that are kept of each lake's use of a source. */
export const KEPT_ENTRIES = 100;

/** Adds an entry and lets the oldest of the same lake and source go. */
export async function addLogEntry(
	db: Kysely<Database>,
	entry: Insertable<FetchLogTable>
): Promise<void> {
	await db.transaction().execute(async (tx) => {
		await tx.insertInto('fetch_log').values(entry).execute();
		const ofSame = tx
			.selectFrom('fetch_log')
			.select('id')
			.where('source_id', '=', entry.source_id)
			.where('lake_id', 'is', entry.lake_id ?? null);
		const oldest = await ofSame
			.orderBy('id', 'desc')
			.offset(KEPT_ENTRIES)
			.limit(1)
			.executeTakeFirst();
		if (oldest === undefined) return;
		await tx
			.deleteFrom('fetch_log')
			.where('source_id', '=', entry.source_id)
			.where('lake_id', 'is', entry.lake_id ?? null)
			.where('id', '<=', oldest.id)
			.execute();
	});
}

export interface LogFilter {
	sourceId?: string;
	lakeId?: string;
	/** Only entries with a fault. */
	onlyFaults?: boolean;
	limit: number;
}

/** The newest entries first. */
export function listLogEntries(
	db: Kysely<Database>,
	{ sourceId, lakeId, onlyFaults = false, limit }: LogFilter
): Promise<FetchLogRow[]> {
	let query = db.selectFrom('fetch_log').selectAll();
	if (sourceId !== undefined) query = query.where('source_id', '=', sourceId);
	if (lakeId !== undefined) query = query.where('lake_id', '=', lakeId);
	if (onlyFaults) query = query.where('faults', '!=', '[]');
	return query.orderBy('id', 'desc').limit(limit).execute();
}
