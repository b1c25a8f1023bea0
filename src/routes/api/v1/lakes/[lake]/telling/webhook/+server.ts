import type { RequestEvent } from '@sveltejs/kit';
import { getTelling, type WebhookState } from '#lib/server/services/telling/settings.ts';
import {
	changeWebhook,
	removeWebhook,
	setWebhook,
	webhookChange,
	webhookInput
} from '#lib/server/services/telling/webhook/webhook.ts';
import { readJson } from '../../../../../body.ts';
import { endpoint, onlyMethods } from '../../../../../endpoint.ts';
import { changed, deleted, type Kept } from '../../../../../if-match.ts';

/** The key that messages are signed with is told this once. */
export const PUT = endpoint(async (event) => {
	const input = await readJson(event.request, webhookInput);
	const webhook = kept(event);
	const set = async () => {
		const { key } = await setWebhook(event.locals.context, webhook.line, input);
		return { ...(await webhook.stands()), key };
	};
	return changed(event, webhook, set, { 'cache-control': 'no-store' });
});

export const PATCH = endpoint(async (event) => {
	const change = await readJson(event.request, webhookChange);
	const webhook = kept(event);
	return changed(event, webhook, async () => {
		await changeWebhook(event.locals.context, webhook.line, change);
		return webhook.stands();
	});
});

export const DELETE = endpoint((event) => {
	const webhook = kept(event);
	return deleted(event, webhook, () => removeWebhook(event.locals.context, webhook.line));
});

export const fallback = onlyMethods('PUT', 'PATCH', 'DELETE');

/** What was delivered meanwhile is no change of it. */
function kept({ locals, params }: RequestEvent): Kept<WebhookState | null> {
	const { lake = '' } = params;
	return {
		line: lake,
		stands: async () => (await getTelling(locals.context, lake)).webhook,
		version: (webhook) => webhook && [webhook.host, webhook.madeAt, webhook.kinds]
	};
}
