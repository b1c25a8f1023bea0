import { json } from '@sveltejs/kit';
import { refreshState, startRefresh } from '#lib/server/services/refresh/refresh-lake.ts';
import { endpoint, onlyMethods } from '../../../../endpoint.ts';
import { started } from './started.ts';

export const GET = endpoint(async ({ locals, params }) =>
	json(await refreshState(locals.context, params['lake'] ?? ''))
);

/** Answers at once; how it goes is told by GET. */
export const POST = endpoint(async ({ locals, params, url }) => {
	const state = await started(() => startRefresh(locals.context, params['lake'] ?? ''));
	return json(state, { status: 202, headers: { location: url.pathname } });
});

export const fallback = onlyMethods('GET', 'POST');
