import { json } from '@sveltejs/kit';
import { testWebhook } from '#lib/server/services/telling/webhook/webhook.ts';
import { endpoint, onlyMethods } from '../../../../../../endpoint.ts';

/** Answers once the receiver has, or has not. */
export const POST = endpoint(async ({ locals, params }) => {
	const posted = await testWebhook(locals.context, params['lake'] ?? '');
	return json(
		posted.isTaken
			? { isTaken: true, status: posted.status, trouble: null }
			: { isTaken: false, status: null, trouble: posted.text }
	);
});

export const fallback = onlyMethods('POST');
