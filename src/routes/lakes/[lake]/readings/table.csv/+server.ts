import { isWinterId } from '#lib/model/calendar.ts';
import { readingsToCsv } from '#lib/server/services/readings-csv.ts';
import { MAIN_SITE } from '#lib/server/services/sites.ts';
import { found } from '../../found.ts';
import type { RequestHandler } from './$types';

export const GET: RequestHandler = async ({ params, locals, url }) => {
	const asked = url.searchParams.get('winter') ?? '';
	const winter = isWinterId(asked) ? asked : undefined;
	const csv = await found(readingsToCsv(locals.context, params.lake, MAIN_SITE, winter));
	const name = ['readings', params.lake, winter].filter(Boolean).join('-');
	return new Response(csv, {
		headers: {
			'content-type': 'text/csv; charset=utf-8',
			'content-disposition': `attachment; filename="${name.replace(/[^\w-]/g, '')}.csv"`
		}
	});
};
