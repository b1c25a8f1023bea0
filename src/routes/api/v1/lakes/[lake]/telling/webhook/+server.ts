import { json } from '@sveltejs/kit';
import { getTelling } from '#lib/server/services/telling/settings.ts';
import {
	changeWebhook,
	removeWebhook,
	setWebhook,
	webhookChange,
	webhookInput
} from '#lib/server/services/telling/webhook/webhook.ts';
import { readJson } from '../../../../../body.ts';
import { endpoint, onlyMethods } from '../../../../../endpoint.ts';

/** The key that messages are signed with is told this once. */
export const PUT = endpoint(async ({ locals, params, request }) => {
	const input = await readJson(request, webhookInput);
	const { key } = await setWebhook(locals.context, params['lake'] ?? '', input);
	const { webhook } = await getTelling(locals.context, params['lake'] ?? '');
	return json({ ...webhook, key }, { headers: { 'cache-control': 'no-store' } });
});

export const PATCH = endpoint(async ({ locals, params, request }) => {
	const change = await readJson(request, webhookChange);
	await changeWebhook(locals.context, params['lake'] ?? '', change);
	return json((await getTelling(locals.context, params['lake'] ?? '')).webhook);
});

export const DELETE = endpoint(async ({ locals, params }) => {
	await removeWebhook(locals.context, params['lake'] ?? '');
	return new Response(null, { status: 204 });
});

export const fallback = onlyMethods('PUT', 'PATCH', 'DELETE');
