import { isWinterId } from '#lib/model/calendar.ts';
import { readingsToCsv } from '#lib/server/services/readings-csv.ts';
import { MAIN } from '#lib/ui/site-link.ts';
import { found } from '../../found.ts';
import { siteOf } from '../../site-of.ts';
import type { RequestHandler } from './$types';

export const GET: RequestHandler = async ({ params, locals, url }) => {
	const asked = url.searchParams.get('winter') ?? '';
	const winter = isWinterId(asked) ? asked : undefined;
	const site = siteOf(url);
	const csv = await found(readingsToCsv(locals.context, params.lake, site, winter));
	const name = ['readings', params.lake, site === MAIN ? null : site, winter]
		.filter(Boolean)
		.join('-');
	return new Response(csv, {
		headers: {
			'content-type': 'text/csv; charset=utf-8',
			'content-disposition': `attachment; filename="${name.replace(/[^\w-]/g, '')}.csv"`
		}
	});
};
