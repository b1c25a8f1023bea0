import { sql, type Kysely, type Transaction } from 'kysely';
import type { IsoDate } from '#lib/model/calendar.ts';
import type { DayValues } from '#lib/model/hours-to-days.ts';
import { countRevision } from './lake-sources.ts';
import type { Database } from './schema.ts';
import type { RejoinTable } from './source-schema.ts';
import { toDayColumns } from './weather-columns.ts';

/**
 * Replaces the joined days from `from` to `to`, both included. False, and nothing is written, where the
 * lake's weather has changed since `change` was read: here or by another process, which may have
 * joined it anew by now.
 */
export function writeJoinedDays(
	db: Kysely<Database>,
	{ lake_id: lakeId, serial }: RejoinTable,
	from: IsoDate,
	to: IsoDate,
	days: readonly DayValues[]
): Promise<boolean> {
	const rows = days.map((day) => ({ lake_id: lakeId, ...toDayColumns(day) }));
	return db.transaction().execute(async (tx) => {
		if ((await readRejoin(tx, lakeId))?.serial !== serial) return false;
		await tx
			.deleteFrom('joined_day')
			.where('lake_id', '=', lakeId)
			.where('day', '>=', from)
			.where('day', '<=', to)
			.execute();
		if (rows.length > 0) await tx.insertInto('joined_day').values(rows).execute();
		return true;
	});
}

/** Where a note begins to count: one that was cleared and made anew is not taken for the one before. */
const FIRST_SERIAL = sql`abs(random() % 1000000000000)`;

/** Notes, in the transaction of the change, that days have to be joined anew. */
export async function markForJoining(
	db: Kysely<Database> | Transaction<Database>,
	lakeId: string,
	from: IsoDate,
	to: IsoDate
): Promise<void> {
	await sql`INSERT INTO rejoin (lake_id, from_day, to_day, serial)
		VALUES (${lakeId}, ${from}, ${to}, ${FIRST_SERIAL})
		ON CONFLICT (lake_id) DO UPDATE SET from_day = min(from_day, excluded.from_day),
			to_day = max(to_day, excluded.to_day), serial = serial + 1`.execute(db);
}

/** The same for every day that a lake has any weather of, whichever origin. */
export async function markAllForJoining(
	db: Kysely<Database> | Transaction<Database>,
	lakeId: string
): Promise<void> {
	await sql`INSERT INTO rejoin (lake_id, from_day, to_day, serial)
		SELECT ${lakeId}, first, last, ${FIRST_SERIAL} FROM (SELECT min(first) AS first, max(last) AS last FROM (
			SELECT min(day) AS first, max(day) AS last FROM weather_day WHERE lake_id = ${lakeId}
			UNION ALL SELECT min(day), max(day) FROM joined_day WHERE lake_id = ${lakeId}
			UNION ALL SELECT min(day), max(day) FROM source_day
				WHERE lake_source_id IN (SELECT id FROM lake_source WHERE lake_id = ${lakeId})
			UNION ALL SELECT date(min(at_s) - 86400, 'unixepoch'), date(max(at_s) + 86400, 'unixepoch')
				FROM source_hour
				WHERE lake_source_id IN (SELECT id FROM lake_source WHERE lake_id = ${lakeId})
		)) WHERE first IS NOT NULL
		ON CONFLICT (lake_id) DO UPDATE SET from_day = min(from_day, excluded.from_day),
			to_day = max(to_day, excluded.to_day), serial = serial + 1`.execute(db);
}

/** The same for every lake that a source has brought weather to. */
export async function markForSource(db: Kysely<Database>, sourceId: string): Promise<void> {
	const uses = await db
		.selectFrom('lake_source')
		.select('lake_id')
		.where('source_id', '=', sourceId)
		.execute();
	for (const { lake_id } of uses) {
		await countRevision(db, lake_id);
		await markAllForJoining(db, lake_id);
	}
}

/** What of a lake has to be joined anew. */
export function readRejoin(db: Kysely<Database>, lakeId: string): Promise<RejoinTable | undefined> {
	return db.selectFrom('rejoin').selectAll().where('lake_id', '=', lakeId).executeTakeFirst();
}

/** Takes the note away unless it has changed since it was read. */
export async function clearRejoin(
	db: Kysely<Database>,
	{ lake_id, serial }: RejoinTable
): Promise<void> {
	await db
		.deleteFrom('rejoin')
		.where('lake_id', '=', lake_id)
		.where('serial', '=', serial)
		.execute();
}
