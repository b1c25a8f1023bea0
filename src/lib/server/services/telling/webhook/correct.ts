import { randomUUID } from 'node:crypto';
import type { Kysely } from 'kysely';
import { message } from '#lib/model/telling/closing.ts';
import type { Context } from '../../../context.ts';
import type { Database } from '../../../storage/schema.ts';
import type { MessageRow } from '../../../storage/telling-messages.ts';
import { isInOutbox, removeFromOutbox } from '../../../storage/webhooks.ts';
import type { LakeRecord } from '../../lakes.ts';
import { enqueueMessages, type OfSite } from './enqueue.ts';

/** A message that was told, and what it is now; `null` where what it told of was deleted. */
export interface Correction {
	was: MessageRow;
	now: MessageRow | null;
	/** The site of the reading; `null` where it was deleted. */
	site: string | null;
}

/**
 * Tells the lake's webhook what is no longer as it was told, in the transaction that notes it. What still
 * waits is sent as it is now, or not at all; what was sent is told anew, with an id of its own.
 */
export async function enqueueCorrections(
	tx: Kysely<Database>,
	ctx: Context,
	lake: LakeRecord,
	corrections: readonly Correction[]
): Promise<void> {
	const messages: OfSite[] = [];
	for (const { was, now, site } of corrections) {
		const isWaiting = await isInOutbox(tx, was.id);
		if (isWaiting) await removeFromOutbox(tx, was.id);
		// Under an id of its own: what is being sent at this moment is struck out by the other.
		if (isWaiting && now !== null) messages.push({ row: { ...now, id: randomUUID() }, site });
		else if (!isWaiting)
			messages.push({ row: now === null ? takenBack(ctx, was) : putRight(now), site });
	}
	await enqueueMessages(tx, ctx, lake, messages);
}

function putRight(now: MessageRow): MessageRow {
	return { ...now, id: randomUUID(), made_at: now.changed_at, title: `Put right: ${now.title}` };
}

function takenBack(ctx: Context, was: MessageRow): MessageRow {
	const at = ctx.now().toISOString();
	return {
		...was,
		id: randomUUID(),
		made_at: at,
		changed_at: at,
		title: `Taken back: ${was.title}`,
		text: message('What was told of this reading counts no more: it was deleted.')
	};
}
