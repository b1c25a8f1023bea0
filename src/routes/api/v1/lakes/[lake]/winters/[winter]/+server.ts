import { json } from '@sveltejs/kit';
import { winterId } from '#lib/server/services/fields.ts';
import {
	deleteSiteWinter,
	getSiteWinter,
	saveSiteWinter,
	winterInputFor
} from '#lib/server/services/winters.ts';
import { readJson } from '../../../../../body.ts';
import { endpoint, onlyMethods } from '../../../../../endpoint.ts';
import { invalid } from '../../../../../problem.ts';
import { readQuery, siteQuery } from '../../../../../query.ts';

export const GET = endpoint(async ({ locals, params, url }) => {
	const { site } = readQuery(url, siteQuery);
	const winter = readWinter(params['winter']);
	return json(await getSiteWinter(locals.context, params['lake'] ?? '', site, winter));
});

export const PUT = endpoint(async ({ locals, params, request, url }) => {
	const { site } = readQuery(url, siteQuery);
	const winter = readWinter(params['winter']);
	const record = { winter, ...(await readJson(request, winterInputFor(winter))) };
	return json(await saveSiteWinter(locals.context, params['lake'] ?? '', site, record));
});

export const DELETE = endpoint(async ({ locals, params, url }) => {
	const { site } = readQuery(url, siteQuery);
	const winter = readWinter(params['winter']);
	await deleteSiteWinter(locals.context, params['lake'] ?? '', site, winter);
	return new Response(null, { status: 204 });
});

export const fallback = onlyMethods('GET', 'PUT', 'DELETE');

function readWinter(text: string | undefined): string {
	const parsed = winterId.safeParse(text);
	if (!parsed.success) throw invalid('winter in the address', parsed.error);
	return parsed.data;
}
