import { sql, type Insertable, type Kysely, type Selectable, type Transaction } from 'kysely';
import type { IsoDate } from '#lib/model/calendar.ts';
import type { Reading } from '#lib/model/reading.ts';
import type { Database, Flag, HoleTable, ReadingTable } from './schema.ts';

export interface ReadingFilter {
	lakeId: string;
	/** Without it those of all sites. */
	site?: string;
	from?: IsoDate;
	to?: IsoDate;
}

/** Readings that are not deleted, by day and then in the order they were entered. */
export async function listReadingRows(
	db: Kysely<Database>,
	{ lakeId, site, from, to }: ReadingFilter
): Promise<Reading[]> {
	let query = db
		.selectFrom('reading')
		.selectAll()
		.where('lake_id', '=', lakeId)
		.where('deleted_at', 'is', null);
	if (site !== undefined) query = query.where('site_id', '=', site);
	if (from !== undefined) query = query.where('day', '>=', from);
	if (to !== undefined) query = query.where('day', '<=', to);
	const rows = await query
		.orderBy('day')
		.orderBy('created_at')
		.orderBy(sql`rowid`)
		.execute();
	return withHoles(db, rows);
}

/** Readings of all sites that are not deleted, logged at an instant or later, in that order. */
export async function listReadingsLoggedSince(
	db: Kysely<Database>,
	lakeId: string,
	since: string
): Promise<{ reading: Reading; site: string; loggedAt: Date }[]> {
	const rows = await db
		.selectFrom('reading')
		.selectAll()
		.where('lake_id', '=', lakeId)
		.where('created_at', '>=', since)
		.where('deleted_at', 'is', null)
		.orderBy('created_at')
		.orderBy(sql`rowid`)
		.execute();
	const logged = new Map(rows.map((row) => [row.id, row]));
	const readings = await withHoles(db, rows);
	return readings.map((reading) => {
		const { site_id = '', created_at = since } = logged.get(reading.id) ?? {};
		return { reading, site: site_id, loggedAt: new Date(created_at) };
	});
}

export interface FoundReading {
	reading: Reading;
	/** Counts up with each change. */
	version: number;
	site: string;
	isDeleted: boolean;
}

/** The reading of this lake, deleted or not. */
export async function findReading(
	db: Kysely<Database>,
	lakeId: string,
	id: string
): Promise<FoundReading | null> {
	const row = await db
		.selectFrom('reading')
		.selectAll()
		.where('lake_id', '=', lakeId)
		.where('id', '=', id)
		.executeTakeFirst();
	if (!row) return null;
	const [reading] = await withHoles(db, [row]);
	if (!reading) return null;
	const { version, site_id, deleted_at } = row;
	return { reading, version, site: site_id, isDeleted: deleted_at !== null };
}

interface ReadingOwner {
	lakeId: string;
	site: string;
	createdAt: Date;
}

/** All or none. */
export async function insertReadings(
	db: Kysely<Database>,
	owner: ReadingOwner,
	readings: readonly Reading[]
): Promise<void> {
	await db.transaction().execute((tx) => writeReadings(tx, owner, readings));
}

/** The same within a transaction. */
export async function writeReadings(
	tx: Transaction<Database>,
	owner: ReadingOwner,
	readings: readonly Reading[]
): Promise<void> {
	for (const part of parts(readings.map((reading) => toRow(owner, reading)))) {
		await tx.insertInto('reading').values(part).execute();
	}
	for (const part of parts(readings.flatMap(toHoleRows))) {
		await tx.insertInto('hole').values(part).execute();
	}
}

/** Writes the reading and its holes over what stands, keeping when it was entered. */
export async function overwriteReading(tx: Transaction<Database>, reading: Reading): Promise<void> {
	const { id } = reading;
	await tx
		.updateTable('reading')
		.set((row) => ({ ...toCells(reading), version: row('version', '+', 1) }))
		.where('id', '=', id)
		.execute();
	await tx.deleteFrom('hole').where('reading_id', '=', id).execute();
	const holes = toHoleRows(reading);
	if (holes.length > 0) await tx.insertInto('hole').values(holes).execute();
}

export async function markReading(
	db: Kysely<Database>,
	id: string,
	deletedAt: Date | null
): Promise<void> {
	const deleted_at = deletedAt?.toISOString() ?? null;
	await db.updateTable('reading').set({ deleted_at }).where('id', '=', id).execute();
}

async function withHoles(
	db: Kysely<Database>,
	rows: readonly Selectable<ReadingTable>[]
): Promise<Reading[]> {
	const holes = new Map<string, Reading['holes']>(rows.map((row) => [row.id, []]));
	for (const part of parts(rows)) {
		const ids = part.map((row) => row.id);
		const found = await db
			.selectFrom('hole')
			.selectAll()
			.where('reading_id', 'in', ids)
			.orderBy('reading_id')
			.orderBy('position')
			.execute();
		for (const { reading_id, position: _, ...hole } of found) holes.get(reading_id)?.push(hole);
	}
	return rows.map((row) => toReading(row, holes.get(row.id) ?? []));
}

function toReading(row: Selectable<ReadingTable>, holes: Reading['holes']): Reading {
	const { id, day, place, kind, core, by_whom, second_hand, remark } = row;
	const secondHand = second_hand === 1;
	return { id, on: day, place, kind, holes, core, by: by_whom, secondHand, remark };
}

function toRow(
	{ lakeId, site, createdAt }: ReadingOwner,
	reading: Reading
): Insertable<ReadingTable> {
	const owner = { lake_id: lakeId, site_id: site, created_at: createdAt.toISOString() };
	return { id: reading.id, ...owner, ...toCells(reading), deleted_at: null };
}

function toCells({ on, place, kind, core, by, secondHand, remark }: Reading) {
	const second_hand: Flag = secondHand ? 1 : 0;
	return { day: on, place, kind, core, by_whom: by, second_hand, remark };
}

function toHoleRows({ id, holes }: Reading): Insertable<HoleTable>[] {
	return holes.map((hole, position) => ({ reading_id: id, position, ...hole }));
}

function parts<T>(rows: readonly T[], size = 500): T[][] {
	return Array.from({ length: Math.ceil(rows.length / size) }, (_, part) =>
		rows.slice(part * size, (part + 1) * size)
	);
}
