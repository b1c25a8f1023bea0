import type { Kysely, Transaction } from 'kysely';
import type { Reading } from '#lib/model/reading.ts';
import { findReading, overwriteReading } from './readings.ts';
import type { ReadingVersionTable } from './readings-schema.ts';
import type { Database } from './schema.ts';

/** A version of a reading that does not stand. */
export interface OtherVersion {
	id: number;
	version: number;
	kind: ReadingVersionTable['kind'];
	reading: Reading;
	at: string;
}

/** Which version of a lake's readings stands, by the reading's id; those at 1 are left out. */
export async function listChangedVersions(
	db: Kysely<Database>,
	lakeId: string
): Promise<Map<string, number>> {
	const rows = await db
		.selectFrom('reading')
		.select(['id', 'version'])
		.where('lake_id', '=', lakeId)
		.where('version', '>', 1)
		.execute();
	return new Map(rows.map(({ id, version }) => [id, version]));
}

/**
 * Puts a reading in the place of the version that stands, which is kept beside it. Returns the new
 * version; `null`, with nothing changed, where another one stands by now.
 */
export async function replaceVersion(
	db: Kysely<Database>,
	lakeId: string,
	{ reading, version, at }: { reading: Reading; version: number; at: Date }
): Promise<number | null> {
	return db.transaction().execute((tx) => replaceVersionIn(tx, lakeId, { reading, version, at }));
}

/** The same within a transaction. */
export async function replaceVersionIn(
	tx: Transaction<Database>,
	lakeId: string,
	{ reading, version, at }: { reading: Reading; version: number; at: Date }
): Promise<number | null> {
	const stands = await findReading(tx, lakeId, reading.id);
	if (stands?.version !== version) return null;
	await insertVersion(tx, { kind: 'replaced', reading: stands.reading, version, at });
	await overwriteReading(tx, reading);
	// Whoever takes what was set aside has chosen.
	await tx
		.deleteFrom('reading_version')
		.where('reading_id', '=', reading.id)
		.where('kind', '=', 'aside')
		.where('content', '=', contentOf(reading))
		.execute();
	return version + 1;
}

/** Keeps what was written over an older version, once; returns its id. */
export async function setAside(
	db: Kysely<Database>,
	{ reading, version, at }: { reading: Reading; version: number; at: Date }
): Promise<number> {
	return db.transaction().execute(async (tx) => {
		const known = await tx
			.selectFrom('reading_version')
			.select('id')
			.where('reading_id', '=', reading.id)
			.where('kind', '=', 'aside')
			.where('content', '=', contentOf(reading))
			.executeTakeFirst();
		return known?.id ?? insertVersion(tx, { kind: 'aside', reading, version, at });
	});
}

/** The last that came first. */
export async function listOtherVersions(
	db: Kysely<Database>,
	readingId: string
): Promise<OtherVersion[]> {
	const rows = await db
		.selectFrom('reading_version')
		.selectAll()
		.where('reading_id', '=', readingId)
		.orderBy('id', 'desc')
		.execute();
	return rows.map(({ id, version, kind, content, at }) => ({
		id,
		version,
		kind,
		reading: JSON.parse(content) as Reading,
		at
	}));
}

/** Marks what was set aside as not chosen; false where nothing is. */
export async function declineVersion(
	db: Kysely<Database>,
	readingId: string,
	id: number
): Promise<boolean> {
	const { numUpdatedRows } = await db
		.updateTable('reading_version')
		.set({ kind: 'declined' })
		.where('reading_id', '=', readingId)
		.where('id', '=', id)
		.where('kind', '=', 'aside')
		.executeTakeFirstOrThrow();
	return numUpdatedRows > 0n;
}

async function insertVersion(
	tx: Transaction<Database>,
	row: { kind: 'replaced' | 'aside'; reading: Reading; version: number; at: Date }
): Promise<number> {
	const { kind, reading, version, at } = row;
	const { id } = await tx
		.insertInto('reading_version')
		.values({
			reading_id: reading.id,
			version,
			kind,
			content: contentOf(reading),
			at: at.toISOString()
		})
		.returning('id')
		.executeTakeFirstOrThrow();
	return id;
}

/** Always in the same order, so that equal readings are equal texts. */
export function contentOf(reading: Reading): string {
	const { id, on, place, kind, holes, core, by, secondHand, remark } = reading;
	const inOrder = holes.map(({ total_m, clear_m, white_m, snow_m, slush_m, freeboard_m }) => ({
		total_m,
		clear_m,
		white_m,
		snow_m,
		slush_m,
		freeboard_m
	}));
	return JSON.stringify({ id, on, place, kind, holes: inOrder, core, by, secondHand, remark });
}
