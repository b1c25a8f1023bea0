import { placesToGpx } from '#lib/server/services/places/places-gpx.ts';
import { found } from '../../found.ts';
import type { RequestHandler } from './$types';

export const GET: RequestHandler = async ({ params, locals }) => {
	const gpx = await found(placesToGpx(locals.context, params.lake));
	const name = `places-${params.lake}`.replace(/[^\w-]/g, '');
	return new Response(gpx, {
		headers: {
			'content-type': 'application/gpx+xml; charset=utf-8',
			'content-disposition': `attachment; filename="${name}.gpx"`
		}
	});
};
