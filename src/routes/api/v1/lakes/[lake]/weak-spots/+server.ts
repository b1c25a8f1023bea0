import { json } from '@sveltejs/kit';
import { placesView } from '#lib/server/services/places/places-view.ts';
import { addWeakSpot, weakSpotInput } from '#lib/server/services/places/weak-spots.ts';
import { readJson } from '../../../../body.ts';
import { endpoint, onlyMethods } from '../../../../endpoint.ts';
import { readQuery, noQuery } from '../../../../query.ts';
import { storedSpot } from '../../../places.ts';

export const GET = endpoint(async ({ locals, params, url }) => {
	readQuery(url, noQuery);
	const { spots } = await placesView(locals.context, params['lake'] ?? '');
	return json(spots);
});

export const POST = endpoint(async ({ locals, params, request, url }) => {
	readQuery(url, noQuery);
	const input = await readJson(request, weakSpotInput);
	const stored = await addWeakSpot(locals.context, params['lake'] ?? '', input);
	return json(storedSpot(stored), { status: 201 });
});

export const fallback = onlyMethods('GET', 'POST');
