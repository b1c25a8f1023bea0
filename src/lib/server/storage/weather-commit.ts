import { sql, type Kysely, type Transaction } from 'kysely';
import { recordImport } from './history.ts';
import { markAllForJoining, markForJoining } from './joined-days.ts';
import type { Database } from './schema.ts';
import { DAY_COLUMNS, HOUR_COLUMNS } from './weather-columns.ts';

interface StagedImport {
	lakeId: string;
	importId: string;
	/** The lake's weather as it was when the days were built from the hours. */
	revision: number;
}

/**
 * Writes what is staged into the lake's weather, whole or not at all.
 * False when another import has changed the weather since `revision`: nothing is written then.
 */
export function commitStaged(db: Kysely<Database>, staged: StagedImport): Promise<boolean> {
	return db.transaction().execute(async (tx) => {
		if (!(await takeRevision(tx, staged))) return false;
		await writeHours(tx, staged);
		await writeDays(tx, staged);
		await markStaged(tx, staged);
		await recordImport(tx, staged.lakeId, await countsOf(tx, staged));
		return true;
	});
}

/** The same for days built from hours in another time zone: the ones before are forgotten. */
export function commitRebuiltDays(
	db: Kysely<Database>,
	staged: StagedImport & { timeZone: string }
): Promise<boolean> {
	return db.transaction().execute(async (tx) => {
		if (!(await takeRevision(tx, staged))) return false;
		const zone = { time_zone: staged.timeZone };
		await tx.updateTable('lake').set(zone).where('id', '=', staged.lakeId).execute();
		await tx
			.deleteFrom('weather_day')
			.where('lake_id', '=', staged.lakeId)
			.where('basis', '=', 'hourly')
			.execute();
		await writeDays(tx, staged);
		await markAllForJoining(tx, staged.lakeId);
		return true;
	});
}

export async function readRevision(db: Kysely<Database>, lakeId: string): Promise<number> {
	const { weather_revision } = await db
		.selectFrom('lake')
		.select('weather_revision')
		.where('id', '=', lakeId)
		.executeTakeFirstOrThrow();
	return weather_revision;
}

async function takeRevision(
	tx: Transaction<Database>,
	{ lakeId, revision }: StagedImport
): Promise<boolean> {
	const { numUpdatedRows } = await tx
		.updateTable('lake')
		.set({ weather_revision: revision + 1 })
		.where('id', '=', lakeId)
		.where('weather_revision', '=', revision)
		.executeTakeFirstOrThrow();
	return numUpdatedRows === 1n;
}

/** The days that were written have to be joined with what other origins say of them. */
async function markStaged(tx: Transaction<Database>, staged: StagedImport): Promise<void> {
	const span = await tx
		.selectFrom('staged_day')
		.select((eb) => [eb.fn.min('day').as('from'), eb.fn.max('day').as('to')])
		.where('import_id', '=', staged.importId)
		.executeTakeFirst();
	if (span?.from && span.to) await markForJoining(tx, staged.lakeId, span.from, span.to);
}

async function countsOf(tx: Transaction<Database>, { importId }: StagedImport) {
	const days = await tx
		.selectFrom('staged_day')
		.select((eb) => [eb.fn.countAll<number>().as('days'), eb.fn.min('day').as('from')])
		.select((eb) => eb.fn.max('day').as('to'))
		.where('import_id', '=', importId)
		.executeTakeFirstOrThrow();
	const { hours } = await tx
		.selectFrom('staged_hour')
		.select((eb) => eb.fn.countAll<number>().as('hours'))
		.where('import_id', '=', importId)
		.executeTakeFirstOrThrow();
	return { ...days, hours };
}

async function writeHours(tx: Transaction<Database>, staged: StagedImport): Promise<void> {
	const names = sql.raw(HOUR_COLUMNS.join(', '));
	const merged = HOUR_COLUMNS.map(
		(name) => `${name} = coalesce(excluded.${name}, weather_hour.${name})`
	);
	await sql`INSERT INTO weather_hour (lake_id, at_s, ${names})
		SELECT ${staged.lakeId}, at_s, ${names} FROM staged_hour
		WHERE import_id = ${staged.importId} ORDER BY at_s
		ON CONFLICT (lake_id, at_s) DO UPDATE SET ${sql.raw(merged.join(', '))}`.execute(tx);
}

/** Days built from hours already hold what was known before and replace it; daily rows add to it. */
async function writeDays(tx: Transaction<Database>, staged: StagedImport): Promise<void> {
	const names = sql.raw(DAY_COLUMNS.join(', '));
	const merged = DAY_COLUMNS.map(
		(name) => `${name} = CASE excluded.basis WHEN 'hourly' THEN excluded.${name}
			ELSE coalesce(excluded.${name}, weather_day.${name}) END`
	);
	await sql`INSERT INTO weather_day (lake_id, basis, day, ${names})
		SELECT ${staged.lakeId}, basis, day, ${names} FROM staged_day
		WHERE import_id = ${staged.importId} ORDER BY basis, day
		ON CONFLICT (lake_id, basis, day) DO UPDATE SET ${sql.raw(merged.join(', '))}`.execute(tx);
}
