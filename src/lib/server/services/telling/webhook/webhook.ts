import { randomUUID } from 'node:crypto';
import { z } from 'zod';
import type { UnitChoice } from '#lib/model/shown-length.ts';
import { DRILL } from '#lib/model/telling/closing.ts';
import { MESSAGE_KINDS } from '#lib/model/telling/message.ts';
import type { Context } from '../../../context.ts';
import {
	deleteWebhook,
	findWebhook,
	updateWebhook,
	writeWebhook,
	type WebhookRow
} from '../../../storage/webhooks.ts';
import { getLake } from '../../lakes.ts';
import { NotFound } from '../../not-found.ts';
import { nudgeTelling } from '../nudge.ts';
import { newSecret } from '../secret.ts';
import { ensureTelling, switchedOff, switchedOn } from '../settings.ts';
import { webhookProblem } from './address.ts';
import { bodyOf } from './body.ts';
import { post } from './deliver.ts';
import type { Posted } from './post.ts';

export class WebhookNotFound extends NotFound {
	constructor(lakeId: string) {
		super('webhook', 'of its own', ` is set up for lake "${lakeId}"`);
	}
}

/** What is sent unless somebody chooses. */
export const USUAL_KINDS = [
	'thawAhead',
	'floodAhead',
	'thresholdExpected',
	'endExpected',
	'readingOverdue',
	'weatherStale',
	'wentThrough'
] as const satisfies readonly (typeof MESSAGE_KINDS)[number][];

const kinds = z.array(z.enum(MESSAGE_KINDS)).min(1, 'must name one kind or more').max(20);

const shape = z.strictObject({
	address: z.string().trim().min(1, 'must not be empty').max(2000),
	kinds: kinds.default([...USUAL_KINDS])
});

export const webhookInput = shape.meta({ id: 'WebhookInput' });
export type NewWebhook = z.output<typeof shape>;

export const webhookChange = z.strictObject({ kinds }).meta({ id: 'WebhookChange' });

/** The same, with the address held to lead where messages may be sent. */
export function webhookInputFor({ webhookHosts }: Context) {
	return shape.superRefine(({ address }, check) => {
		const message = webhookProblem(address, webhookHosts);
		if (message !== null) check.addIssue({ code: 'custom', path: ['address'], message });
	});
}

/**
 * Sets up the lake's webhook, or sets it up anew. Tells this once the key that messages are signed with.
 * What still waited goes to the new address.
 * @throws LakeNotFound; ZodError for an address that nothing is sent to
 */
export async function setWebhook(
	ctx: Context,
	lakeId: string,
	input: NewWebhook,
	units?: UnitChoice
): Promise<{ key: string }> {
	await getLake(ctx, lakeId);
	const { address, kinds } = webhookInputFor(ctx).parse(input);
	await ensureTelling(ctx, lakeId, units);
	const key = newSecret();
	await writeWebhook(ctx.db, {
		lake_id: lakeId,
		address,
		key,
		kinds: JSON.stringify(kinds),
		made_at: ctx.now().toISOString(),
		failures: 0,
		next_at: null,
		stopped_at: null,
		trouble: null,
		delivered_at: null
	});
	await switchedOn(ctx, lakeId);
	return { key };
}

/** Chooses what is sent from now on. @throws LakeNotFound, WebhookNotFound */
export async function changeWebhook(
	ctx: Context,
	lakeId: string,
	{ kinds }: z.output<typeof webhookChange>
): Promise<void> {
	const row = await requireWebhook(ctx, lakeId);
	await updateWebhook(ctx.db, row, { kinds: JSON.stringify(kinds) });
}

/** Nothing is sent any more, and what waited is forgotten. @throws LakeNotFound */
export async function removeWebhook(ctx: Context, lakeId: string): Promise<void> {
	await getLake(ctx, lakeId);
	await ctx.db.transaction().execute(async (tx) => {
		await deleteWebhook(tx, lakeId);
		await switchedOff(tx, lakeId);
	});
}

/** Tries again what was given up, at once. @throws LakeNotFound, WebhookNotFound */
export async function resumeWebhook(ctx: Context, lakeId: string): Promise<void> {
	const row = await requireWebhook(ctx, lakeId);
	await updateWebhook(ctx.db, row, { stopped_at: null, failures: 0, next_at: null });
	nudgeTelling(ctx, lakeId);
}

/** Sends a message that tells nothing, once, and says how it went. @throws LakeNotFound, WebhookNotFound */
export async function testWebhook(ctx: Context, lakeId: string): Promise<Posted> {
	const lake = await getLake(ctx, lakeId);
	const row = await requireWebhook(ctx, lakeId);
	const id = randomUUID();
	const body = bodyOf(
		{
			id,
			kind: 'test',
			made_at: ctx.now().toISOString(),
			load_id: null,
			reading_id: null,
			about_day: null,
			title: 'Test message: it tells nothing',
			text: `This message tries the way and tells nothing of the ice. ${DRILL}`
		},
		null,
		{ lake, address: ctx.address }
	);
	return post(ctx, row, { id, body });
}

async function requireWebhook(ctx: Context, lakeId: string): Promise<WebhookRow> {
	await getLake(ctx, lakeId);
	const row = await findWebhook(ctx.db, lakeId);
	if (!row) throw new WebhookNotFound(lakeId);
	return row;
}
