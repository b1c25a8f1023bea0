import { json } from '@sveltejs/kit';
import { startEarlierWinters } from '#lib/server/services/refresh/refresh-lake.ts';
import { endpoint, onlyMethods } from '../../../../../endpoint.ts';
import { started } from '../started.ts';

/** Answers at once; how it goes is told where that of any refresh is. */
export const POST = endpoint(async ({ locals, params }) => {
	const lake = params['lake'] ?? '';
	const state = await started(() => startEarlierWinters(locals.context, lake));
	return json(state, { status: 202, headers: { location: `/api/v1/lakes/${lake}/refresh` } });
});

export const fallback = onlyMethods('POST');
