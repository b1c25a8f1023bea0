import { json } from '@sveltejs/kit';
import { sourceChange } from '#lib/server/services/sources/input.ts';
import { deleteSource, getSource, updateSource } from '#lib/server/services/sources/sources.ts';
import { readJson } from '../../../body.ts';
import { endpoint, onlyMethods } from '../../../endpoint.ts';

export const GET = endpoint(async ({ locals, params }) =>
	json(await getSource(locals.context, params['id'] ?? ''))
);

export const PATCH = endpoint(async ({ locals, params, request }) => {
	const change = await readJson(request, sourceChange);
	return json(await updateSource(locals.context, params['id'] ?? '', change));
});

export const DELETE = endpoint(async ({ locals, params }) => {
	await deleteSource(locals.context, params['id'] ?? '');
	return new Response(null, { status: 204 });
});

export const fallback = onlyMethods('GET', 'PATCH', 'DELETE');
