import { json } from '@sveltejs/kit';
import { readingChange } from '#lib/server/services/reading-input.ts';
import { deleteReading, getReading, updateReading } from '#lib/server/services/readings.ts';
import { readJson } from '../../../../../body.ts';
import { endpoint, onlyMethods } from '../../../../../endpoint.ts';

export const GET = endpoint(async ({ locals, params }) =>
	json(await getReading(locals.context, params['lake'] ?? '', params['id'] ?? ''))
);

export const PATCH = endpoint(async ({ locals, params, request }) => {
	const change = await readJson(request, readingChange);
	return json(
		await updateReading(locals.context, params['lake'] ?? '', params['id'] ?? '', change)
	);
});

export const DELETE = endpoint(async ({ locals, params }) => {
	await deleteReading(locals.context, params['lake'] ?? '', params['id'] ?? '');
	return new Response(null, { status: 204 });
});

export const fallback = onlyMethods('GET', 'PATCH', 'DELETE');
