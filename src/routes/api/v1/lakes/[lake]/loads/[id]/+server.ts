import { json, type RequestEvent } from '@sveltejs/kit';
import { loadChange } from '#lib/server/services/load-input.ts';
import { deleteLoad, getLoad, updateLoad } from '#lib/server/services/own-loads.ts';
import { readJson } from '../../../../../body.ts';
import { endpoint, onlyMethods } from '../../../../../endpoint.ts';

export const GET = endpoint(async (event) =>
	json(await getLoad(event.locals.context, ...named(event)))
);

export const PATCH = endpoint(async (event) => {
	const change = await readJson(event.request, loadChange);
	return json(await updateLoad(event.locals.context, ...named(event), change));
});

export const DELETE = endpoint(async (event) => {
	await deleteLoad(event.locals.context, ...named(event));
	return new Response(null, { status: 204 });
});

export const fallback = onlyMethods('GET', 'PATCH', 'DELETE');

function named({ params }: RequestEvent): [lake: string, id: string] {
	return [params['lake'] ?? '', params['id'] ?? ''];
}
