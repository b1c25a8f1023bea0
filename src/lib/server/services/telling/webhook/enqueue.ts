import type { Kysely } from 'kysely';
import type { Context } from '../../../context.ts';
import type { Database } from '../../../storage/schema.ts';
import type { MessageRow } from '../../../storage/telling-messages.ts';
import { enqueueBodies, findWebhook, removeOlderFromOutbox } from '../../../storage/webhooks.ts';
import type { LakeRecord } from '../../lakes.ts';
import { kindsOf } from '../settings.ts';
import { bodyOf } from './body.ts';

/** What has waited longer is not sent any more: nobody is helped by a thaw of last month. */
const WAITS_D = 30;

/** Puts what the lake's webhook wants to hear of into its outbox, in the transaction that tells it. */
export async function enqueueMessages(
	tx: Kysely<Database>,
	{ address, now }: Context,
	lake: LakeRecord,
	messages: readonly MessageRow[]
): Promise<void> {
	const webhook = await findWebhook(tx, lake.id);
	if (!webhook) return;
	const kinds = new Set<string>(kindsOf(webhook));
	const bodies = messages
		.filter(({ kind }) => kinds.has(kind))
		.map((row) => ({
			id: row.id,
			lake_id: lake.id,
			body: bodyOf(row, { lake, address }),
			made_at: row.made_at
		}));
	await enqueueBodies(tx, bodies);
	const before = new Date(now().getTime() - WAITS_D * 86_400_000).toISOString();
	await removeOlderFromOutbox(tx, lake.id, before);
}
