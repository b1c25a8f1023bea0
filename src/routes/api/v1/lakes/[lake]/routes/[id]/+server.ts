import { json } from '@sveltejs/kit';
import { routeInput } from '#lib/server/services/places/route-input.ts';
import { deleteRoute, getRoute, updateRoute } from '#lib/server/services/places/routes.ts';
import { readJson } from '../../../../../body.ts';
import { endpoint, onlyMethods } from '../../../../../endpoint.ts';
import { storedRoute } from '../../../../places.ts';

export const GET = endpoint(async ({ locals, params }) =>
	json(await getRoute(locals.context, params['lake'] ?? '', params['id'] ?? ''))
);

export const PUT = endpoint(async ({ locals, params, request }) => {
	const input = await readJson(request, routeInput);
	const [lake, id] = [params['lake'] ?? '', params['id'] ?? ''];
	return json(storedRoute(await updateRoute(locals.context, lake, id, input)));
});

export const DELETE = endpoint(async ({ locals, params }) => {
	await deleteRoute(locals.context, params['lake'] ?? '', params['id'] ?? '');
	return new Response(null, { status: 204 });
});

export const fallback = onlyMethods('GET', 'PUT', 'DELETE');
