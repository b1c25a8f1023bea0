import type { Insertable, Kysely, Selectable, Transaction } from 'kysely';
import type { IsoDate, WinterId } from '#lib/model/calendar.ts';
import type { SiteEvent, SiteWinter } from '#lib/model/site-winter.ts';
import type { Database, SiteEventTable } from './schema.ts';

interface Site {
	lakeId: string;
	site: string;
}

/** What people recorded of a winter; nothing recorded, or deleted, is a record of nulls. */
export async function readSiteWinter(
	db: Kysely<Database>,
	{ lakeId, site }: Site,
	winter: WinterId
): Promise<SiteWinter> {
	const row = await db
		.selectFrom('winter')
		.selectAll()
		.where('lake_id', '=', lakeId)
		.where('site_id', '=', site)
		.where('winter', '=', winter)
		.where('deleted_at', 'is', null)
		.executeTakeFirst();
	const nothing = { winter, freezeUpOn: null, freezeUpBy: null, iceOutOn: null, events: [] };
	if (!row) return nothing;
	const events = await db
		.selectFrom('site_event')
		.selectAll()
		.where('lake_id', '=', lakeId)
		.where('site_id', '=', site)
		.where('winter', '=', winter)
		.orderBy('position')
		.execute();
	return {
		winter,
		freezeUpOn: row.freeze_up_on,
		freezeUpBy: row.freeze_up_by,
		iceOutOn: row.ice_out_on,
		events: events.map(toEvent)
	};
}

/** Replaces the whole record of the winter. */
export async function writeSiteWinter(
	db: Kysely<Database>,
	{ lakeId, site }: Site,
	record: SiteWinter
): Promise<void> {
	await db.transaction().execute((tx) => writeSiteWinterIn(tx, { lakeId, site }, record));
}

/** The same while `was` is what stands; `false`, and nothing is written, where it is not any more. */
export async function replaceSiteWinter(
	db: Kysely<Database>,
	site: Site,
	was: SiteWinter,
	record: SiteWinter
): Promise<boolean> {
	return db.transaction().execute(async (tx) => {
		const stands = await readSiteWinter(tx, site, record.winter);
		if (JSON.stringify(stands) !== JSON.stringify(was)) return false;
		await writeSiteWinterIn(tx, site, record);
		return true;
	});
}

/** The same within a transaction. */
export async function writeSiteWinterIn(
	tx: Transaction<Database>,
	{ lakeId, site }: Site,
	record: SiteWinter
): Promise<void> {
	const key = { lake_id: lakeId, site_id: site, winter: record.winter };
	const dates = {
		freeze_up_on: record.freezeUpOn,
		freeze_up_by: record.freezeUpBy,
		ice_out_on: record.iceOutOn
	};
	await tx
		.insertInto('winter')
		.values({ ...key, ...dates })
		.onConflict((conflict) =>
			conflict.columns(['lake_id', 'site_id', 'winter']).doUpdateSet({ ...dates, deleted_at: null })
		)
		.execute();
	await tx
		.deleteFrom('site_event')
		.where('lake_id', '=', lakeId)
		.where('site_id', '=', site)
		.where('winter', '=', record.winter)
		.execute();
	const events = record.events.map((event, position) => ({ ...key, position, ...toRow(event) }));
	if (events.length > 0) await tx.insertInto('site_event').values(events).execute();
}

/** Marks the record of a winter as deleted, or no more; `false` where nothing is recorded. */
export async function markWinter(
	db: Kysely<Database>,
	{ lakeId, site }: Site,
	winter: WinterId,
	deletedAt: Date | null
): Promise<boolean> {
	const done = await db
		.updateTable('winter')
		.set({ deleted_at: deletedAt?.toISOString() ?? null })
		.where('lake_id', '=', lakeId)
		.where('site_id', '=', site)
		.where('winter', '=', winter)
		.executeTakeFirst();
	return done.numUpdatedRows > 0n;
}

/** Winters with a recorded freeze-up, oldest first. */
export async function listRecordedWinters(
	db: Kysely<Database>,
	{ lakeId, site }: Site
): Promise<WinterId[]> {
	const rows = await db
		.selectFrom('winter')
		.select('winter')
		.where('lake_id', '=', lakeId)
		.where('site_id', '=', site)
		.where('freeze_up_on', 'is not', null)
		.where('deleted_at', 'is', null)
		.orderBy('winter')
		.execute();
	return rows.map((row) => row.winter);
}

/** Winters that anything was ever recorded of, oldest first. */
export async function listKeptWinters(
	db: Kysely<Database>,
	{ lakeId, site }: Site
): Promise<WinterId[]> {
	const rows = await db
		.selectFrom('winter')
		.select('winter')
		.where('lake_id', '=', lakeId)
		.where('site_id', '=', site)
		.where('deleted_at', 'is', null)
		.orderBy('winter')
		.execute();
	return rows.map((row) => row.winter);
}

/** The earliest freeze-up of a lake's sites in a winter. */
export async function readFirstFreezeUp(
	db: Kysely<Database>,
	lakeId: string,
	winter: WinterId
): Promise<IsoDate | null> {
	const row = await db
		.selectFrom('winter')
		.select((eb) => eb.fn.min('freeze_up_on').as('on'))
		.where('lake_id', '=', lakeId)
		.where('winter', '=', winter)
		.where('deleted_at', 'is', null)
		.executeTakeFirst();
	return row?.on ?? null;
}

export interface RecordedSpan {
	winter: WinterId;
	/** The earliest freeze-up and the latest ice-out of the lake's sites. */
	freezeUpOn: IsoDate;
	iceOutOn: IsoDate | null;
}

/** Winters before one with a freeze-up on record at any site of a lake, the latest first. */
export async function listWintersBefore(
	db: Kysely<Database>,
	lakeId: string,
	winter: WinterId
): Promise<RecordedSpan[]> {
	const rows = await db
		.selectFrom('winter')
		.select((eb) => [
			'winter',
			eb.fn.min('freeze_up_on').as('freezeUpOn'),
			eb.fn.max('ice_out_on').as('iceOutOn')
		])
		.where('lake_id', '=', lakeId)
		.where('winter', '<', winter)
		.where('freeze_up_on', 'is not', null)
		.where('deleted_at', 'is', null)
		.groupBy('winter')
		.orderBy('winter', 'desc')
		.execute();
	return rows.flatMap(({ freezeUpOn, ...row }) =>
		freezeUpOn === null ? [] : [{ ...row, freezeUpOn }]
	);
}

type EventColumns = Omit<Insertable<SiteEventTable>, 'lake_id' | 'site_id' | 'winter' | 'position'>;

function toRow(event: SiteEvent): EventColumns {
	return {
		day: event.on,
		kind: event.kind,
		refroze_on: event.kind === 'reopened' ? event.refrozeOn : null,
		snow_m: event.kind === 'cleared' ? event.snow_m : null,
		density_kg_m3: event.kind === 'packed' ? event.density_kg_m3 : null,
		water_m: event.kind === 'pumped' ? event.water_m : null
	};
}

function toEvent(row: Selectable<SiteEventTable>): SiteEvent {
	const on = row.day;
	switch (row.kind) {
		case 'reopened':
			return { kind: row.kind, on, refrozeOn: row.refroze_on };
		case 'cleared':
			return { kind: row.kind, on, snow_m: required(row.snow_m, row) };
		case 'packed':
			return { kind: row.kind, on, density_kg_m3: row.density_kg_m3 };
		case 'pumped':
			return { kind: row.kind, on, water_m: required(row.water_m, row) };
	}
}

function required(value: number | null, row: { kind: string; day: string }): number {
	if (value === null)
		throw new Error(`Event ${row.kind} of ${row.day} is stored without its depth`);
	return value;
}
