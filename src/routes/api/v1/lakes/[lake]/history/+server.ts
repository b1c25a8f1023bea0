import { json } from '@sveltejs/kit';
import { listHistory } from '#lib/server/services/history/history.ts';
import { endpoint, onlyMethods } from '../../../../endpoint.ts';
import { historyQuery, readQuery } from '../../../../query.ts';

export const GET = endpoint(async ({ locals, params, url }) => {
	const { before } = readQuery(url, historyQuery);
	return json(await listHistory(locals.context, params['lake'] ?? '', before ?? null));
});

export const fallback = onlyMethods('GET');
