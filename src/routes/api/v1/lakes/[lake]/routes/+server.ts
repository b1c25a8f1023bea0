import { json } from '@sveltejs/kit';
import { placesView } from '#lib/server/services/places/places-view.ts';
import { routeInput } from '#lib/server/services/places/route-input.ts';
import { addRoute } from '#lib/server/services/places/routes.ts';
import { readJson } from '../../../../body.ts';
import { endpoint, onlyMethods } from '../../../../endpoint.ts';
import { noQuery, readQuery } from '../../../../query.ts';
import { storedRoute } from '../../../places.ts';

export const GET = endpoint(async ({ locals, params, url }) => {
	readQuery(url, noQuery);
	const { routes } = await placesView(locals.context, params['lake'] ?? '');
	return json(routes);
});

export const POST = endpoint(async ({ locals, params, request, url }) => {
	readQuery(url, noQuery);
	const input = await readJson(request, routeInput);
	const stored = await addRoute(locals.context, params['lake'] ?? '', input);
	return json(storedRoute(stored), { status: 201 });
});

export const fallback = onlyMethods('GET', 'POST');
