import { json } from '@sveltejs/kit';
import { holePlan } from '#lib/model/places/hole-plan.ts';
import { getLake } from '#lib/server/services/lakes.ts';
import { getRoute } from '#lib/server/services/places/routes.ts';
import { endpoint, onlyMethods } from '../../../../../../endpoint.ts';
import { holesQuery, readQuery } from '../../../../../../query.ts';

export const GET = endpoint(async ({ locals, params, url }) => {
	const { vehicle } = readQuery(url, holesQuery);
	const [lake, id] = [params['lake'] ?? '', params['id'] ?? ''];
	const route = await getRoute(locals.context, lake, id);
	const { water } = await getLake(locals.context, lake);
	return json(holePlan(route, water === 'river', vehicle === '1' || vehicle === 'true'));
});

export const fallback = onlyMethods('GET');
