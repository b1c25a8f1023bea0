import type { RequestEvent } from '@sveltejs/kit';
import type { Route } from '#lib/model/places/route.ts';
import { routeInput } from '#lib/server/services/places/route-input.ts';
import { deleteRoute, getRoute, updateRoute } from '#lib/server/services/places/routes.ts';
import { readJson } from '../../../../../body.ts';
import { endpoint, onlyMethods } from '../../../../../endpoint.ts';
import { changed, deleted, told, type Kept } from '../../../../../if-match.ts';
import { storedRoute } from '../../../../places.ts';

export const GET = endpoint((event) => told(kept(event)));

export const PUT = endpoint(async (event) => {
	const input = await readJson(event.request, routeInput);
	const { lake = '', id = '' } = event.params;
	return changed(event, kept(event), async () =>
		storedRoute(await updateRoute(event.locals.context, lake, id, input))
	);
});

export const DELETE = endpoint((event) => {
	const { lake = '', id = '' } = event.params;
	return deleted(event, kept(event), () => deleteRoute(event.locals.context, lake, id));
});

export const fallback = onlyMethods('GET', 'PUT', 'DELETE');

function kept({ locals, params }: RequestEvent): Kept<Route> {
	const { lake = '', id = '' } = params;
	return { line: lake, stands: () => getRoute(locals.context, lake, id) };
}
