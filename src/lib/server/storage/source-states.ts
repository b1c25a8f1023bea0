import { sql, type Kysely, type Selectable, type Updateable } from 'kysely';
import type { IsoDate } from '#lib/model/calendar.ts';
import type { Database } from './schema.ts';
import type { SourceStateTable } from './source-schema.ts';

export type SourceState = Selectable<SourceStateTable>;

export function readSourceState(db: Kysely<Database>, sourceId: string): Promise<SourceState> {
	return db
		.selectFrom('source_state')
		.selectAll()
		.where('source_id', '=', sourceId)
		.executeTakeFirstOrThrow();
}

export function listSourceStates(db: Kysely<Database>): Promise<SourceState[]> {
	return db.selectFrom('source_state').selectAll().execute();
}

export async function updateSourceState(
	db: Kysely<Database>,
	sourceId: string,
	change: Updateable<SourceStateTable>
): Promise<void> {
	if (Object.keys(change).length === 0) return;
	await db.updateTable('source_state').set(change).where('source_id', '=', sourceId).execute();
}

/** Adds to the calls of a UTC day; of another day they start from nothing. */
export async function countCalls(
	db: Kysely<Database>,
	sourceId: string,
	on: IsoDate,
	calls: number
): Promise<void> {
	await sql`UPDATE source_state
		SET calls = CASE WHEN calls_on = ${on} THEN calls ELSE 0 END + ${calls}, calls_on = ${on}
		WHERE source_id = ${sourceId}`.execute(db);
}

/** What was left alone after failures may be asked again; a wait that the source asked for stands. */
export async function forgetFailures(db: Kysely<Database>, sourceId: string): Promise<void> {
	await updateSourceState(db, sourceId, { back_off_until_at: null, failures: 0 });
}
