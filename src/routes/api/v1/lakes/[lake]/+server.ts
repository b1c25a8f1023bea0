import { json } from '@sveltejs/kit';
import { asSeenBy } from '#lib/server/services/access/rough-place.ts';
import { deleteLake, getLake, lakeChange, updateLake } from '#lib/server/services/lakes.ts';
import { readJson } from '../../../body.ts';
import { endpoint, onlyMethods } from '../../../endpoint.ts';

export const GET = endpoint(async ({ locals, params }) =>
	json(asSeenBy(locals.viewer, await getLake(locals.context, params['lake'] ?? '')))
);

export const PATCH = endpoint(async ({ locals, params, request }) => {
	const change = await readJson(request, lakeChange);
	return json(await updateLake(locals.context, params['lake'] ?? '', change));
});

export const DELETE = endpoint(async ({ locals, params }) => {
	await deleteLake(locals.context, params['lake'] ?? '');
	return new Response(null, { status: 204 });
});

export const fallback = onlyMethods('GET', 'PATCH', 'DELETE');
