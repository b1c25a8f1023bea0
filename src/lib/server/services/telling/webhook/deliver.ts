import type { Context } from '../../../context.ts';
import {
	firstInOutbox,
	listDueWebhooks,
	removeFromOutbox,
	updateWebhook,
	type OutboxRow,
	type WebhookRow
} from '../../../storage/webhooks.ts';
import { userAgent } from '../../../weather/source/user-agent.ts';
import { postWebhook, TIME_OUT_MS, type Posted } from './post.ts';

/** After so many failures in a row, about three days, nothing is sent until somebody looks. Our choice. */
export const GIVE_UP_AFTER = 20;
const FIRST_WAIT_MIN = 1;
const LONGEST_WAIT_MIN = 360;
/** Receivers that are sent to side by side, and messages to one of them in a round. */
const AT_ONCE = 8;
const IN_A_ROUND = 20;

export interface Delivering {
	signal?: AbortSignal | undefined;
	/** Asked before each message: whether no other process sends until this one has had its time. */
	mayPost?: () => boolean;
}

/**
 * Sends what waits, each lake's in its order, and tells how many messages were taken. One is struck out
 * only after the receiver took it: cut off in between, it is sent again with the same id.
 */
export async function deliverDue(
	ctx: Context,
	{ signal, mayPost = () => true }: Delivering = {}
): Promise<number> {
	const due = await listDueWebhooks(ctx.db, ctx.now(), LONGEST_WAIT_MIN);
	let taken = 0;
	for (let at = 0; at < due.length; at += AT_ONCE) {
		if (signal?.aborted || !mayPost()) break;
		const part = due.slice(at, at + AT_ONCE);
		const counts = await Promise.all(
			part.map((webhook) => deliver(ctx, webhook, { signal, mayPost }))
		);
		taken += counts.reduce((sum, count) => sum + count, 0);
	}
	return taken;
}

async function deliver(
	ctx: Context,
	webhook: WebhookRow,
	{ signal, mayPost }: Required<Pick<Delivering, 'mayPost'>> & { signal: AbortSignal | undefined }
): Promise<number> {
	let failures = webhook.failures;
	for (let taken = 0; taken < IN_A_ROUND; taken++) {
		const message = await firstInOutbox(ctx.db, webhook.lake_id);
		if (!message || signal?.aborted || !mayPost()) return taken;
		const posted = await post(ctx, webhook, message, signal);
		if (signal?.aborted) return taken;
		if (!posted.isTaken) {
			await noteFailure(ctx, webhook, failures + 1, posted);
			return taken;
		}
		failures = 0;
		await noteTaken(ctx, webhook, message);
	}
	return IN_A_ROUND;
}

export function post(
	{ weather, webhookHosts }: Context,
	webhook: WebhookRow,
	message: Pick<OutboxRow, 'id' | 'body'>,
	signal?: AbortSignal
): Promise<Posted> {
	return postWebhook(webhook, message, {
		allowedHosts: webhookHosts,
		userAgent: userAgent(weather.contact),
		timeOut_ms: TIME_OUT_MS,
		...(signal ? { signal } : {})
	});
}

async function noteTaken(ctx: Context, webhook: WebhookRow, { id }: OutboxRow): Promise<void> {
	await ctx.db.transaction().execute(async (tx) => {
		await removeFromOutbox(tx, id);
		await updateWebhook(tx, webhook, {
			failures: 0,
			next_at: null,
			trouble: null,
			delivered_at: ctx.now().toISOString()
		});
	});
}

async function noteFailure(
	ctx: Context,
	webhook: WebhookRow,
	failures: number,
	{ isGone, text }: Extract<Posted, { isTaken: false }>
): Promise<void> {
	const now = ctx.now();
	const isStopped = isGone || failures >= GIVE_UP_AFTER;
	const next = new Date(now.getTime() + wait_min(failures) * 60_000);
	await updateWebhook(ctx.db, webhook, {
		failures,
		trouble: text,
		next_at: next.toISOString(),
		...(isStopped ? { stopped_at: now.toISOString() } : {})
	});
}

/** Twice as long each time. */
export function wait_min(failures: number): number {
	return Math.min(LONGEST_WAIT_MIN, FIRST_WAIT_MIN * 2 ** (failures - 1));
}
