import { listSites } from '#lib/server/services/sites.ts';
import { siteOf } from './site-of.ts';
import type { LayoutServerLoad } from './$types';

/** Which sites the lake has and which one the address means, for every page of the lake. */
export const load: LayoutServerLoad = async ({ params, locals, url }) => ({
	sites: await listSites(locals.context, params.lake),
	site: siteOf(url)
});
