import { json } from '@sveltejs/kit';
import { placesFromGpx, placesToGpx } from '#lib/server/services/places/places-gpx.ts';
import { LARGEST_GPX_BYTES } from '#lib/server/services/places/gpx/parse-gpx.ts';
import { readBytes } from '../../../../body.ts';
import { endpoint, onlyMethods } from '../../../../endpoint.ts';
import { Problem } from '../../../../problem.ts';
import { gpxQuery, noQuery, readQuery } from '../../../../query.ts';
import { gpxResponse, GPX_TYPES } from '../../../places.ts';

export const GET = endpoint(async ({ locals, params, url }) => {
	readQuery(url, noQuery);
	const lake = params['lake'] ?? '';
	return gpxResponse(await placesToGpx(locals.context, lake), lake);
});

export const POST = endpoint(async ({ locals, params, request, url }) => {
	const { waypointsAs } = readQuery(url, gpxQuery);
	const bytes = await readBytes(request, GPX_TYPES, LARGEST_GPX_BYTES);
	const taken = await placesFromGpx(locals.context, params['lake'] ?? '', bytes, waypointsAs);
	if (taken.status === 'refused') throw new Problem(400, 'Bad Request', taken.reason);
	const { spots, routes, notes } = taken;
	return json({ spots, routes, notes }, { status: 201 });
});

export const fallback = onlyMethods('GET', 'POST');
