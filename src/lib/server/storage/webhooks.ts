import type { Insertable, Kysely, Selectable, Updateable } from 'kysely';
import type { Database } from './schema.ts';
import { laterThanEver } from './set-right.ts';
import type { WebhookOutboxTable, WebhookTable } from './telling-schema.ts';

export type WebhookRow = Selectable<WebhookTable>;
export type OutboxRow = Selectable<WebhookOutboxTable>;

export function findWebhook(db: Kysely<Database>, lakeId: string): Promise<WebhookRow | undefined> {
	return db.selectFrom('webhook').selectAll().where('lake_id', '=', lakeId).executeTakeFirst();
}

/** Set up anew it has failed nothing, and what waits for it goes to the new address. */
export async function writeWebhook(
	db: Kysely<Database>,
	row: Insertable<WebhookTable>
): Promise<void> {
	const { lake_id: _, ...values } = row;
	await db
		.insertInto('webhook')
		.values(row)
		.onConflict((conflict) => conflict.column('lake_id').doUpdateSet(values))
		.execute();
}

/** Only while it is the one that was read: it may have been set up anew since. */
export async function updateWebhook(
	db: Kysely<Database>,
	{ lake_id, key }: Pick<WebhookRow, 'lake_id' | 'key'>,
	change: Updateable<WebhookTable>
): Promise<void> {
	await db
		.updateTable('webhook')
		.set(change)
		.where('lake_id', '=', lake_id)
		.where('key', '=', key)
		.execute();
}

/** With all that waits for it. */
export async function deleteWebhook(db: Kysely<Database>, lakeId: string): Promise<void> {
	await db.deleteFrom('webhook').where('lake_id', '=', lakeId).execute();
}

/**
 * Webhooks that have something to send and may try by an instant, or wait for longer than they ever do,
 * by a clock that was ahead.
 */
export function listDueWebhooks(
	db: Kysely<Database>,
	now: Date,
	longest_min: number
): Promise<WebhookRow[]> {
	return db
		.selectFrom('webhook')
		.innerJoin('lake', 'lake.id', 'webhook.lake_id')
		.selectAll('webhook')
		.where('lake.deleted_at', 'is', null)
		.where('webhook.stopped_at', 'is', null)
		.where((at) =>
			at.or([
				at('webhook.next_at', 'is', null),
				at('webhook.next_at', '<=', now.toISOString()),
				at('webhook.next_at', '>', laterThanEver(now, longest_min))
			])
		)
		.where('webhook.lake_id', 'in', (db) => db.selectFrom('webhook_outbox').select('lake_id'))
		.execute();
}

export async function enqueueBodies(
	db: Kysely<Database>,
	rows: readonly Insertable<WebhookOutboxTable>[]
): Promise<void> {
	if (rows.length > 0)
		await db
			.insertInto('webhook_outbox')
			.values([...rows])
			.execute();
}

/** The one that has waited longest. */
export function firstInOutbox(
	db: Kysely<Database>,
	lakeId: string
): Promise<OutboxRow | undefined> {
	return db
		.selectFrom('webhook_outbox')
		.selectAll()
		.where('lake_id', '=', lakeId)
		.orderBy('serial')
		.limit(1)
		.executeTakeFirst();
}

/** All that waits for a lake's webhook. */
export function listOutbox(db: Kysely<Database>, lakeId: string): Promise<OutboxRow[]> {
	return db.selectFrom('webhook_outbox').selectAll().where('lake_id', '=', lakeId).execute();
}

export async function countOutbox(db: Kysely<Database>, lakeId: string): Promise<number> {
	const { count } = await db
		.selectFrom('webhook_outbox')
		.select((eb) => eb.fn.countAll<number>().as('count'))
		.where('lake_id', '=', lakeId)
		.executeTakeFirstOrThrow();
	return count;
}

export async function isInOutbox(db: Kysely<Database>, id: string): Promise<boolean> {
	const row = await db
		.selectFrom('webhook_outbox')
		.select('id')
		.where('id', '=', id)
		.executeTakeFirst();
	return row !== undefined;
}

/** What has been delivered waits no more. */
export async function removeFromOutbox(db: Kysely<Database>, id: string): Promise<void> {
	await db.deleteFrom('webhook_outbox').where('id', '=', id).execute();
}

export async function removeOlderFromOutbox(
	db: Kysely<Database>,
	lakeId: string,
	before: string
): Promise<void> {
	await db
		.deleteFrom('webhook_outbox')
		.where('lake_id', '=', lakeId)
		.where('made_at', '<', before)
		.execute();
}
