import type { Kysely, Selectable, Transaction, Updateable } from 'kysely';
import type { Database, Flag } from './schema.ts';
import { laterThanEver } from './set-right.ts';
import type { LakeSourceTable } from './source-schema.ts';

export type LakeSourceRow = Selectable<LakeSourceTable>;

/** The sources that a lake uses, the most trusted first; those that are deleted are left out. */
export function listLakeSourceRows(
	db: Kysely<Database>,
	lakeId: string
): Promise<(LakeSourceRow & { position: number })[]> {
	return db
		.selectFrom('lake_source')
		.innerJoin('source', 'source.id', 'lake_source.source_id')
		.selectAll('lake_source')
		.where('lake_id', '=', lakeId)
		.where('position', 'is not', null)
		.where('source.deleted_at', 'is', null)
		.orderBy('position')
		.$narrowType<{ position: number }>()
		.execute();
}

/** Every use that a lake makes or has made of a source. */
export function listAllUses(db: Kysely<Database>, lakeId: string): Promise<LakeSourceRow[]> {
	return db.selectFrom('lake_source').selectAll().where('lake_id', '=', lakeId).execute();
}

/** Every use that a lake, deleted or not, makes or has made of a source. */
export function listAllUsesOfSource(
	db: Kysely<Database>,
	sourceId: string
): Promise<LakeSourceRow[]> {
	return db.selectFrom('lake_source').selectAll().where('source_id', '=', sourceId).execute();
}

/** Every use of a source, by lakes that are not deleted. */
export function listUsesOfSource(db: Kysely<Database>, sourceId: string): Promise<LakeSourceRow[]> {
	return db
		.selectFrom('lake_source')
		.innerJoin('lake', 'lake.id', 'lake_source.lake_id')
		.selectAll('lake_source')
		.where('source_id', '=', sourceId)
		.where('position', 'is not', null)
		.where('lake.deleted_at', 'is', null)
		.orderBy('lake_source.id')
		.execute();
}

/**
 * What is due at an instant, of sources that are on, the longest overdue first; with it what was put off
 * for longer than it ever is, by a clock that was ahead.
 */
export function listDueRows(
	db: Kysely<Database>,
	at: Date,
	longest_min: number
): Promise<LakeSourceRow[]> {
	return db
		.selectFrom('lake_source')
		.innerJoin('source', 'source.id', 'lake_source.source_id')
		.innerJoin('lake', 'lake.id', 'lake_source.lake_id')
		.selectAll('lake_source')
		.where('position', 'is not', null)
		.where('source.is_on', '=', 1)
		.where('source.deleted_at', 'is', null)
		.where('lake.deleted_at', 'is', null)
		.where((eb) =>
			eb.or([
				eb('next_at', 'is', null),
				eb('next_at', '<=', at.toISOString()),
				eb('next_at', '>', laterThanEver(at, longest_min))
			])
		)
		.orderBy('next_at')
		.orderBy('lake_source.id')
		.execute();
}

export function findLakeSourceRow(
	db: Kysely<Database>,
	id: number
): Promise<LakeSourceRow | undefined> {
	return db.selectFrom('lake_source').selectAll().where('id', '=', id).executeTakeFirst();
}

export async function updateLakeSourceRow(
	db: Kysely<Database>,
	id: number,
	change: Updateable<LakeSourceTable>
): Promise<void> {
	await db.updateTable('lake_source').set(change).where('id', '=', id).execute();
}

/** How many more trusted sources come before what people imported; none without a record. */
export async function readCsvPosition(db: Kysely<Database>, lakeId: string): Promise<number> {
	const row = await db
		.selectFrom('csv_trust')
		.select('position')
		.where('lake_id', '=', lakeId)
		.executeTakeFirst();
	return row?.position ?? 0;
}

export interface UsedSource {
	sourceId: string;
	correctsElevation: Flag;
	station: string | null;
}

/** A person has changed which weather counts. */
export async function countRevision(db: Kysely<Database>, lakeId: string): Promise<void> {
	await db
		.updateTable('lake')
		.set((eb) => ({ weather_revision: eb('weather_revision', '+', 1) }))
		.where('id', '=', lakeId)
		.execute();
}

/** Replaces a lake's order of trust. What a source that falls out has brought is kept, unused. */
export async function writeTrust(
	tx: Transaction<Database>,
	lakeId: string,
	used: readonly UsedSource[],
	csvPosition: number
): Promise<void> {
	await tx
		.updateTable('lake_source')
		.set({ position: null })
		.where('lake_id', '=', lakeId)
		.execute();
	for (const [position, { sourceId, correctsElevation, station }] of used.entries()) {
		const values = { position, corrects_elevation: correctsElevation, station };
		await tx
			.insertInto('lake_source')
			.values({ lake_id: lakeId, source_id: sourceId, ...values })
			.onConflict((conflict) => conflict.columns(['lake_id', 'source_id']).doUpdateSet(values))
			.execute();
	}
	await tx
		.insertInto('csv_trust')
		.values({ lake_id: lakeId, position: csvPosition })
		.onConflict((conflict) => conflict.column('lake_id').doUpdateSet({ position: csvPosition }))
		.execute();
	await countRevision(tx, lakeId);
}
