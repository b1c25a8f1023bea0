import { json } from '@sveltejs/kit';
import { createLake, listLakes, newLake } from '#lib/server/services/lakes.ts';
import { readJson } from '../../body.ts';
import { endpoint, onlyMethods } from '../../endpoint.ts';

export const GET = endpoint(async ({ locals }) => json(await listLakes(locals.context)));

export const POST = endpoint(async ({ locals, request }) => {
	const lake = await createLake(locals.context, await readJson(request, newLake));
	return json(lake, { status: 201, headers: { location: `/api/v1/lakes/${lake.id}` } });
});

export const fallback = onlyMethods('GET', 'POST');
