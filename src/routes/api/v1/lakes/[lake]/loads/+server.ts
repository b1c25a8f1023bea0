import { json } from '@sveltejs/kit';
import { loadInput } from '#lib/server/services/load-input.ts';
import { addLoad } from '#lib/server/services/own-loads.ts';
import { listedLoads } from '#lib/server/services/shown-loads.ts';
import { readJson } from '../../../../body.ts';
import { endpoint, onlyMethods } from '../../../../endpoint.ts';

export const GET = endpoint(async ({ locals, params }) =>
	json(await listedLoads(locals.context, params['lake'] ?? ''))
);

export const POST = endpoint(async ({ locals, params, request }) => {
	const lake = params['lake'] ?? '';
	const load = await addLoad(locals.context, lake, await readJson(request, loadInput));
	const location = `/api/v1/lakes/${lake}/loads/${load.id}`;
	return json(load, { status: 201, headers: { location } });
});

export const fallback = onlyMethods('GET', 'POST');
