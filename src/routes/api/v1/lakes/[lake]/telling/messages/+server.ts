import { json } from '@sveltejs/kit';
import { toldMessages } from '#lib/server/services/telling/messages.ts';
import { endpoint, onlyMethods } from '../../../../../endpoint.ts';
import { messagesQuery, readQuery } from '../../../../../query.ts';

export const GET = endpoint(async ({ locals, params, url }) => {
	const { limit } = readQuery(url, messagesQuery);
	return json(await toldMessages(locals.context, params['lake'] ?? '', limit));
});

export const fallback = onlyMethods('GET');
