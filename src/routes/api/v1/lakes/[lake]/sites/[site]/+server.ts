import { json } from '@sveltejs/kit';
import { siteChange } from '#lib/server/services/site-input.ts';
import { deleteSite, getSite, updateSite } from '#lib/server/services/sites.ts';
import { readJson } from '../../../../../body.ts';
import { endpoint, onlyMethods } from '../../../../../endpoint.ts';
import { storedSite } from '../../../../stored-site.ts';

export const GET = endpoint(async ({ locals, params }) =>
	json(await getSite(locals.context, params['lake'] ?? '', params['site'] ?? ''))
);

export const PATCH = endpoint(async ({ locals, params, request }) => {
	const { lake = '', site = '' } = params;
	const change = await readJson(request, siteChange);
	return json(storedSite(await updateSite(locals.context, lake, site, change), 400));
});

export const DELETE = endpoint(async ({ locals, params }) => {
	const { lake = '', site = '' } = params;
	storedSite(await deleteSite(locals.context, lake, site), 409);
	return new Response(null, { status: 204 });
});

export const fallback = onlyMethods('GET', 'PATCH', 'DELETE');
