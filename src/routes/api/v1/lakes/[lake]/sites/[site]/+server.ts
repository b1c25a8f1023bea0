import type { RequestEvent } from '@sveltejs/kit';
import { siteChange } from '#lib/server/services/site-input.ts';
import { deleteSite, getSite, updateSite, type SiteRecord } from '#lib/server/services/sites.ts';
import { readJson } from '../../../../../body.ts';
import { endpoint, onlyMethods } from '../../../../../endpoint.ts';
import { changed, deleted, told, type Kept } from '../../../../../if-match.ts';
import { storedSite } from '../../../../stored-site.ts';

export const GET = endpoint((event) => told(kept(event)));

export const PATCH = endpoint(async (event) => {
	const { lake = '', site = '' } = event.params;
	const change = await readJson(event.request, siteChange);
	return changed(event, kept(event), async () =>
		storedSite(await updateSite(event.locals.context, lake, site, change), 400)
	);
});

export const DELETE = endpoint((event) => {
	const { lake = '', site = '' } = event.params;
	return deleted(event, kept(event), async () =>
		storedSite(await deleteSite(event.locals.context, lake, site), 409)
	);
});

export const fallback = onlyMethods('GET', 'PATCH', 'DELETE');

function kept({ locals, params }: RequestEvent): Kept<SiteRecord> {
	const { lake = '', site = '' } = params;
	return { line: lake, stands: () => getSite(locals.context, lake, site) };
}
