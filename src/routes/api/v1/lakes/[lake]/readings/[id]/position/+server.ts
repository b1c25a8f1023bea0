import { json } from '@sveltejs/kit';
import { getPosition, positionInput, putPosition } from '#lib/server/services/reading-positions.ts';
import { readJson } from '../../../../../../body.ts';
import { endpoint, onlyMethods } from '../../../../../../endpoint.ts';

export const GET = endpoint(async ({ locals, params }) => {
	const { lake = '', id = '' } = params;
	return json({ position: await getPosition(locals.context, lake, id) });
});

export const PUT = endpoint(async ({ locals, params, request }) => {
	const { lake = '', id = '' } = params;
	const position = await readJson(request, positionInput);
	await putPosition(locals.context, lake, id, position);
	return json({ position });
});

export const DELETE = endpoint(async ({ locals, params }) => {
	const { lake = '', id = '' } = params;
	await putPosition(locals.context, lake, id, null);
	return new Response(null, { status: 204 });
});

export const fallback = onlyMethods('GET', 'PUT', 'DELETE');
