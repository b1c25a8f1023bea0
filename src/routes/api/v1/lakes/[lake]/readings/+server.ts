import { json } from '@sveltejs/kit';
import { z } from 'zod';
import { readingInput } from '#lib/server/services/reading-input.ts';
import { addReadings, listReadings } from '#lib/server/services/readings.ts';
import { checked, readJson } from '../../../../body.ts';
import { endpoint, onlyMethods } from '../../../../endpoint.ts';
import { readingsQuery, readQuery, siteQuery } from '../../../../query.ts';

const severalReadings = z.array(readingInput).max(5000);

export const GET = endpoint(async ({ locals, params, url }) => {
	const { site, winter } = readQuery(url, readingsQuery);
	return json(await listReadings(locals.context, params['lake'] ?? '', site, winter));
});

export const POST = endpoint(async ({ locals, params, request, url }) => {
	const { site } = readQuery(url, siteQuery);
	const body = await readJson(request, z.unknown());
	// Not a union of the two: its complaint would not name the field.
	const list = Array.isArray(body) ? checked(body, severalReadings) : [checked(body, readingInput)];
	const ids = await addReadings(locals.context, params['lake'] ?? '', site, list);
	return json({ ids }, { status: 201 });
});

export const fallback = onlyMethods('GET', 'POST');
