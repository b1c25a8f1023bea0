import { json } from '@sveltejs/kit';
import { getTelling } from '#lib/server/services/telling/settings.ts';
import { resumeWebhook } from '#lib/server/services/telling/webhook/webhook.ts';
import { endpoint, onlyMethods } from '../../../../../../endpoint.ts';

export const POST = endpoint(async ({ locals, params }) => {
	await resumeWebhook(locals.context, params['lake'] ?? '');
	return json((await getTelling(locals.context, params['lake'] ?? '')).webhook);
});

export const fallback = onlyMethods('POST');
