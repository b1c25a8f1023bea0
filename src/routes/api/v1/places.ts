import type { StoredRoute } from '#lib/server/services/places/routes.ts';
import type { StoredSpot } from '#lib/server/services/places/weak-spots.ts';
import { Problem } from '../problem.ts';

/** What GPX is sent as. */
export const GPX_TYPES = ['application/gpx+xml', 'application/xml', 'text/xml'];

export function gpxResponse(gpx: string, lakeId: string): Response {
	const name = `places-${lakeId}`.replace(/[^\w-]/g, '');
	return new Response(gpx, {
		headers: {
			'content-type': 'application/gpx+xml; charset=utf-8',
			'content-disposition': `attachment; filename="${name}.gpx"`
		}
	});
}

/** The weak spot, or the problem that stood in the way. @throws Problem */
export function storedSpot(stored: StoredSpot) {
	if (stored.status === 'stored') return stored.spot;
	if (stored.status === 'tooMany') throw new Problem(409, 'Conflict', 'The list is full');
	const detail = `A weak spot named "${stored.name}" is on the list already; choose another name`;
	const issues = [{ field: 'name', message: 'is taken' }];
	throw new Problem(409, 'Conflict', detail, { issues });
}

/** The route, or the problem that stood in the way. @throws Problem */
export function storedRoute(stored: StoredRoute) {
	if (stored.status === 'stored') return stored.route;
	if (stored.status === 'tooMany')
		throw new Problem(409, 'Conflict', 'There are as many routes as the lake can have');
	const field = `points.${stored.point}.spot`;
	const issues = [{ field, message: "must be the id of one of the lake's weak spots" }];
	throw new Problem(400, 'Bad Request', `${field} is no weak spot of this lake`, { issues });
}
