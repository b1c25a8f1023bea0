import { sql, type Kysely, type Transaction } from 'kysely';
import type { IsoDate } from '#lib/model/calendar.ts';
import { markForJoining } from './joined-days.ts';
import { updateLakeSourceRow } from './lake-sources.ts';
import type { Database } from './schema.ts';
import { SLACK_MS } from './set-right.ts';

/** What a use has brought as observed that cannot have been by now. */
export interface Ahead {
	lakeSourceId: number;
	lakeId: string;
	timeZone: string;
	lastHourAt_s: number | null;
	lastDay: IsoDate | null;
}

/**
 * Uses whose last observed hour has not ended at an instant and a while after, or whose last day may not
 * be over: which day it is, the lake's own calendar tells.
 */
export async function listAhead(db: Kysely<Database>, now: Date): Promise<Ahead[]> {
	const now_s = now.getTime() / 1000;
	const today = now.toISOString().slice(0, 10);
	const { rows } = await sql<Ahead>`SELECT * FROM (
		SELECT lake_source.id AS lakeSourceId, lake_id AS lakeId, time_zone AS timeZone,
			(SELECT max(at_s) FROM source_hour WHERE lake_source_id = lake_source.id) AS lastHourAt_s,
			(SELECT max(day) FROM source_day WHERE lake_source_id = lake_source.id) AS lastDay
		FROM lake_source JOIN lake ON lake.id = lake_id)
		WHERE lastHourAt_s > ${now_s + SLACK_MS / 1000} - 3600 OR lastDay >= date(${today}, '-1 day')`.execute(
		db
	);
	return rows;
}

export interface Over {
	/** Hours that end later, and days from this one on, go. */
	now: Date;
	today: IsoDate;
}

/**
 * Lets go of a use's hours and days that are not over, and has all it told asked for anew: of what is
 * over by now, nobody knows which of it was only forecast when it came.
 */
export async function forgetAhead(
	tx: Transaction<Database>,
	{ lakeSourceId, lakeId, lastHourAt_s, lastDay }: Ahead,
	{ now, today }: Over
): Promise<void> {
	await tx
		.deleteFrom('source_hour')
		.where('lake_source_id', '=', lakeSourceId)
		.where('at_s', '>', now.getTime() / 1000 - 3600)
		.execute();
	await tx
		.deleteFrom('source_day')
		.where('lake_source_id', '=', lakeSourceId)
		.where('day', '>=', today)
		.execute();
	const lastOn = new Date((lastHourAt_s ?? 0) * 1000).toISOString().slice(0, 10);
	const last = lastDay !== null && lastDay > lastOn ? lastDay : lastOn;
	await markForJoining(tx, lakeId, today, last > today ? last : today);
	await tx
		.updateTable('fetch_state')
		.set({ validators: null, fresh_until_at: null, last_success_at: null })
		.where('lake_source_id', '=', lakeSourceId)
		.execute();
	await updateLakeSourceRow(tx, lakeSourceId, { asked_from: null, next_at: null });
}
