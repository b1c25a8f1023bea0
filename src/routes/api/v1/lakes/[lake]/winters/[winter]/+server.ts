import type { RequestEvent } from '@sveltejs/kit';
import type { SiteWinter } from '#lib/model/site-winter.ts';
import { winterId } from '#lib/server/services/fields.ts';
import {
	deleteSiteWinter,
	getSiteWinter,
	saveSiteWinter,
	winterInputFor
} from '#lib/server/services/winters.ts';
import { readJson } from '../../../../../body.ts';
import { endpoint, onlyMethods } from '../../../../../endpoint.ts';
import { changed, deleted, told, type Kept } from '../../../../../if-match.ts';
import { invalid } from '../../../../../problem.ts';
import { readQuery, siteQuery } from '../../../../../query.ts';

export const GET = endpoint((event) => told(kept(event)));

export const PUT = endpoint(async (event) => {
	const { site } = readQuery(event.url, siteQuery);
	const winter = readWinter(event.params['winter']);
	const record = { winter, ...(await readJson(event.request, winterInputFor(winter))) };
	return changed(event, kept(event), () =>
		saveSiteWinter(event.locals.context, event.params['lake'] ?? '', site, record)
	);
});

export const DELETE = endpoint((event) => {
	const { site } = readQuery(event.url, siteQuery);
	const winter = readWinter(event.params['winter']);
	return deleted(event, kept(event), () =>
		deleteSiteWinter(event.locals.context, event.params['lake'] ?? '', site, winter)
	);
});

export const fallback = onlyMethods('GET', 'PUT', 'DELETE');

function kept({ locals, params, url }: RequestEvent): Kept<SiteWinter> {
	const { site } = readQuery(url, siteQuery);
	const [lake, winter] = [params['lake'] ?? '', readWinter(params['winter'])];
	return { line: lake, stands: () => getSiteWinter(locals.context, lake, site, winter) };
}

function readWinter(text: string | undefined): string {
	const parsed = winterId.safeParse(text);
	if (!parsed.success) throw invalid('winter in the address', parsed.error);
	return parsed.data;
}
