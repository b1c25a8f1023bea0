import type { Kysely } from 'kysely';
import type { IsoDate, WinterId } from '#lib/model/calendar.ts';
import type { Database } from './schema.ts';

export interface LoadLead {
	load: string;
	lead_d: number;
}

export interface RemovalRecord {
	/** The local removal date as typed; `null`: none. */
	removalOn: IsoDate | null;
	/** Of loads that somebody typed one for. */
	leads: LoadLead[];
}

export async function readRemoval(
	db: Kysely<Database>,
	lakeId: string,
	winter: WinterId
): Promise<RemovalRecord> {
	const row = await db
		.selectFrom('removal')
		.select('removal_on')
		.where('lake_id', '=', lakeId)
		.where('winter', '=', winter)
		.executeTakeFirst();
	const leads = await db
		.selectFrom('load_lead')
		.select(['load_id as load', 'lead_d'])
		.where('lake_id', '=', lakeId)
		.orderBy('load_id')
		.execute();
	return { removalOn: row?.removal_on ?? null, leads };
}

/** Replaces the date of the winter and all leads of the lake. */
export async function writeRemoval(
	db: Kysely<Database>,
	lakeId: string,
	winter: WinterId,
	{ removalOn, leads }: RemovalRecord
): Promise<void> {
	await db.transaction().execute(async (tx) => {
		await tx
			.deleteFrom('removal')
			.where('lake_id', '=', lakeId)
			.where('winter', '=', winter)
			.execute();
		if (removalOn !== null) {
			const row = { lake_id: lakeId, winter, removal_on: removalOn };
			await tx.insertInto('removal').values(row).execute();
		}
		await tx.deleteFrom('load_lead').where('lake_id', '=', lakeId).execute();
		const rows = leads.map(({ load, lead_d }) => ({ lake_id: lakeId, load_id: load, lead_d }));
		if (rows.length > 0) await tx.insertInto('load_lead').values(rows).execute();
	});
}
