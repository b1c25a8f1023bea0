import { json } from '@sveltejs/kit';
import { restoreSource } from '#lib/server/services/sources/sources.ts';
import { endpoint, onlyMethods } from '../../../../endpoint.ts';

export const POST = endpoint(async ({ locals, params }) =>
	json(await restoreSource(locals.context, params['id'] ?? ''))
);

export const fallback = onlyMethods('POST');
