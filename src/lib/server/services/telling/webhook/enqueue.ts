import type { Kysely } from 'kysely';
import type { Context } from '../../../context.ts';
import type { Database } from '../../../storage/schema.ts';
import type { MessageRow } from '../../../storage/telling-messages.ts';
import {
	enqueueBodies,
	findWebhook,
	listOutbox,
	removeFromOutbox,
	removeOlderFromOutbox
} from '../../../storage/webhooks.ts';
import type { LakeRecord } from '../../lakes.ts';
import { kindsOf } from '../settings.ts';
import { bodyOf, type WebhookBody } from './body.ts';

/** What has waited longer is not sent any more: nobody is helped by a thaw of last month. */
const WAITS_D = 30;

/** A message with the site that it is about; `null` for the weather, which is the lake's. */
export interface OfSite {
	row: MessageRow;
	site: string | null;
}

/**
 * Puts what the lake's webhook wants to hear of into its outbox, in the transaction that tells it. What
 * still waits there of the same matter is overtaken and never sent: it could be the last that is heard
 * for hours. Of other matters each keeps its turn.
 */
export async function enqueueMessages(
	tx: Kysely<Database>,
	{ address, now }: Context,
	lake: LakeRecord,
	messages: readonly OfSite[]
): Promise<void> {
	const webhook = await findWebhook(tx, lake.id);
	if (!webhook) return;
	const kinds = new Set<string>(kindsOf(webhook));
	const all = messages.map(({ row, site }) => ({
		row,
		body: bodyOf(row, site, { lake, address })
	}));
	const matters = new Set(all.map(({ body }) => matterOf(body)));
	for (const { id, body } of await listOutbox(tx, lake.id))
		if (matters.has(matterOf(body))) await removeFromOutbox(tx, id);
	const wanted = all.filter(({ row }) => kinds.has(row.kind));
	await enqueueBodies(
		tx,
		wanted.map(({ row: { id, made_at }, body }) => ({ id, lake_id: lake.id, body, made_at }))
	);
	const before = new Date(now().getTime() - WAITS_D * 86_400_000).toISOString();
	await removeOlderFromOutbox(tx, lake.id, before);
}

/** What a message is about: the newest of a matter is all that counts of it. */
function matterOf(body: string): string {
	const { kind, site, load, reading } = JSON.parse(body) as WebhookBody;
	return JSON.stringify(reading == null ? [kind, site, load] : [reading]);
}
