import { json } from '@sveltejs/kit';
import { earlyIceAnswer } from '#lib/server/services/early-ice.ts';
import { endpoint, onlyMethods } from '../../../../endpoint.ts';
import { earlyIceQuery, readQuery } from '../../../../query.ts';
import { insideWinter } from '../../../read-forecast.ts';

export const GET = endpoint(async ({ locals, params, url }) => {
	const query = readQuery(url, earlyIceQuery);
	const lake = params['lake'] ?? '';
	return json(await insideWinter(earlyIceAnswer(locals.context, lake, query)));
});

export const fallback = onlyMethods('GET');
