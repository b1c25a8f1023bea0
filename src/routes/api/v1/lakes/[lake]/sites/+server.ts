import { json } from '@sveltejs/kit';
import { getLake } from '#lib/server/services/lakes.ts';
import { newSite } from '#lib/server/services/site-input.ts';
import { createSite, listSites } from '#lib/server/services/sites.ts';
import { readJson } from '../../../../body.ts';
import { endpoint, onlyMethods } from '../../../../endpoint.ts';
import { storedSite } from '../../../stored-site.ts';

export const GET = endpoint(async ({ locals, params }) => {
	const { id } = await getLake(locals.context, params['lake'] ?? '');
	return json(await listSites(locals.context, id));
});

export const POST = endpoint(async ({ locals, params, request }) => {
	const lake = params['lake'] ?? '';
	const site = storedSite(
		await createSite(locals.context, lake, await readJson(request, newSite)),
		400
	);
	const location = `/api/v1/lakes/${lake}/sites/${site.id}`;
	return json(site, { status: 201, headers: { location } });
});

export const fallback = onlyMethods('GET', 'POST');
