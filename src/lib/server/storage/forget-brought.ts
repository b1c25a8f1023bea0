import type { Transaction } from 'kysely';
import { markAllForJoining } from './joined-days.ts';
import { countRevision, type LakeSourceRow } from './lake-sources.ts';
import type { Database } from './schema.ts';

const BROUGHT = [
	'source_hour',
	'source_day',
	'forecast_issue',
	'forecast_hour',
	'fetch_state'
] as const;

const NOTHING = {
	asked_from: null,
	next_at: null,
	has_precipitation: null,
	station_name: null,
	station_latitude: null,
	station_longitude: null,
	station_elevation_m: null
};

/**
 * Lets go what uses have brought, where it is another place's or was read wrongly, so that it is asked
 * for anew. The days are noted for joining first: once their hours are gone nothing tells them.
 */
export async function forgetBrought(
	tx: Transaction<Database>,
	uses: readonly Pick<LakeSourceRow, 'id' | 'lake_id'>[]
): Promise<void> {
	for (const { id, lake_id } of uses) {
		await countRevision(tx, lake_id);
		await markAllForJoining(tx, lake_id);
		for (const table of BROUGHT) {
			await tx.deleteFrom(table).where('lake_source_id', '=', id).execute();
		}
		await tx.updateTable('lake_source').set(NOTHING).where('id', '=', id).execute();
	}
}
