import { z } from 'zod';
import type { ZodOpenApiPathsObject } from 'zod-openapi';
import { MESSAGE_KINDS } from '#lib/model/telling/message.ts';
import { tellingChange, type TellingRecord } from '#lib/server/services/telling/settings.ts';
import type { ToldMessage } from '#lib/server/services/telling/messages.ts';
import { webhookChange, webhookInput } from '#lib/server/services/telling/webhook/webhook.ts';
import { messagesQuery } from '../../query.ts';
import { answer, asSeen, body, gone, operation } from './operation.ts';
import type { Json } from './source-answers.ts';

const instant = z.string().meta({ format: 'date-time' });

const feed = z
	.object({ madeAt: instant, fetchedAt: instant.nullable() })
	.nullable()
	.describe('null: switched off');

const webhook = z
	.object({
		host: z.string().describe('The rest of the address is not told again'),
		kinds: z.array(z.enum(MESSAGE_KINDS)),
		madeAt: instant,
		deliveredAt: instant.nullable(),
		waiting: z.int().describe('Messages that wait to be delivered'),
		failures: z.int().describe('In a row'),
		nextAt: instant.nullable(),
		stoppedAt: instant.nullable().describe('When it was given up'),
		trouble: z.string().nullable().describe('Why the last try failed')
	})
	.meta({ id: 'Webhook' });

const telling = z
	.object({
		lake: z.string(),
		sites: z.array(z.string()),
		loads: z.array(z.string()),
		readingAfter_d: z.int(),
		units: z.object({ measure: z.enum(['metric', 'imperial']), mass: z.enum(['kg', 'lb']) }),
		calendar: feed,
		changes: feed,
		webhook: webhook.nullable()
	})
	.meta({ id: 'Telling' }) satisfies z.ZodType<Json<TellingRecord>>;

const madeFeed = z
	.object({ address: z.string().describe('Told this once: a digest of it is stored') })
	.meta({ id: 'MadeFeed' });

const madeWebhook = webhook
	.extend({ key: z.string().describe('Signs each message; told this once') })
	.meta({ id: 'MadeWebhook' });

const posted = z
	.object({
		isTaken: z.boolean(),
		status: z.int().nullable(),
		trouble: z.string().nullable()
	})
	.meta({ id: 'PostedTest' });

const message = z
	.object({
		id: z.string(),
		kind: z.string(),
		load: z.string().nullable(),
		on: z.string().nullable(),
		title: z.string(),
		text: z.string(),
		madeAt: instant,
		changedAt: instant
	})
	.meta({ id: 'ToldMessage' }) satisfies z.ZodType<Json<ToldMessage>>;

const path = z.object({ lake: z.string() });

/** What is told of a lake, and by which ways. */
export function tellings(): ZodOpenApiPathsObject {
	const at = (end = '') => `/api/v1/lakes/{lake}/telling${end}`;
	return {
		[at()]: {
			get: operation('What is told, and by which ways', answer(telling), { path }),
			patch: operation('Change what is told; what is absent stays', answer(telling), {
				path,
				...asSeen,
				requestBody: body(tellingChange)
			})
		},
		[at('/calendar')]: feedOperations('calendar'),
		[at('/changes')]: feedOperations('feed of changes'),
		[at('/webhook')]: {
			put: operation('Set up the webhook, or set it up anew', answer(madeWebhook), {
				path,
				...asSeen,
				requestBody: body(webhookInput)
			}),
			patch: operation('Choose what is sent', answer(webhook), {
				path,
				...asSeen,
				requestBody: body(webhookChange)
			}),
			delete: operation('Remove the webhook and what waits for it', gone(), { ...asSeen, path })
		},
		[at('/webhook/test')]: {
			post: operation('Send a message that tells nothing', answer(posted), { path })
		},
		[at('/webhook/resume')]: {
			post: operation('Try again what was given up', answer(webhook), { path })
		},
		[at('/messages')]: {
			get: operation('What was told, the newest first', answer(z.array(message)), {
				path,
				query: messagesQuery
			})
		}
	};
}

function feedOperations(what: string) {
	return {
		post: operation(`Switch the ${what} on, or give it another address`, answer(madeFeed, '201'), {
			path
		}),
		delete: operation(`Revoke the address of the ${what}`, gone(), { path })
	};
}
