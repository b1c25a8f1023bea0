import { json } from '@sveltejs/kit';
import {
	deleteWeakSpot,
	getWeakSpot,
	updateWeakSpot,
	weakSpotInput
} from '#lib/server/services/places/weak-spots.ts';
import { readJson } from '../../../../../body.ts';
import { endpoint, onlyMethods } from '../../../../../endpoint.ts';
import { storedSpot } from '../../../../places.ts';

export const GET = endpoint(async ({ locals, params }) =>
	json(await getWeakSpot(locals.context, params['lake'] ?? '', params['id'] ?? ''))
);

export const PUT = endpoint(async ({ locals, params, request }) => {
	const input = await readJson(request, weakSpotInput);
	const [lake, id] = [params['lake'] ?? '', params['id'] ?? ''];
	return json(storedSpot(await updateWeakSpot(locals.context, lake, id, input)));
});

export const DELETE = endpoint(async ({ locals, params }) => {
	await deleteWeakSpot(locals.context, params['lake'] ?? '', params['id'] ?? '');
	return new Response(null, { status: 204 });
});

export const fallback = onlyMethods('GET', 'PUT', 'DELETE');
