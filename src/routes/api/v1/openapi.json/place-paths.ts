import { z } from 'zod';
import type { ZodOpenApiPathsObject } from 'zod-openapi';
import { routeInput } from '#lib/server/services/places/route-input.ts';
import { tripNoteInput } from '#lib/server/services/places/trip-notes.ts';
import { weakSpotInput } from '#lib/server/services/places/weak-spots.ts';
import { gpxQuery, holesQuery } from '../../query.ts';
import { answer, asSeen, body, gone, operation } from './operation.ts';
import * as answers from './place-answers.ts';

const lakePath = z.object({ lake: z.string() });
const idPath = lakePath.extend({ id: z.string() });
const gpx = { 'application/gpx+xml': { schema: z.string() } };

/** Weak spots, routes over them, and the sheet for a trip. */
export function places(): ZodOpenApiPathsObject {
	return { ...weakSpots(), ...routes(), ...exchange() };
}

function weakSpots(): ZodOpenApiPathsObject {
	return {
		'/api/v1/lakes/{lake}/weak-spots': {
			get: operation(
				'Places where the estimate does not hold, as they stand today',
				answer(z.array(answers.spotState)),
				{ path: lakePath }
			),
			post: operation('Add a weak spot', answer(answers.weakSpot, '201'), {
				path: lakePath,
				requestBody: body(weakSpotInput)
			})
		},
		'/api/v1/lakes/{lake}/weak-spots/{id}': {
			get: operation('A weak spot', answer(answers.weakSpot), { path: idPath }),
			put: operation(
				'Replace a weak spot; readings of its old name get the new one',
				answer(answers.weakSpot),
				{ ...asSeen, path: idPath, requestBody: body(weakSpotInput) }
			),
			delete: operation('Take a weak spot off the list', gone(), { ...asSeen, path: idPath })
		}
	};
}

function routes(): ZodOpenApiPathsObject {
	return {
		'/api/v1/lakes/{lake}/routes': {
			get: operation(
				'Routes and what their weakest points carry today',
				answer(z.array(answers.routeState)),
				{ path: lakePath }
			),
			post: operation('Add a route', answer(answers.route, '201'), {
				path: lakePath,
				requestBody: body(routeInput)
			})
		},
		'/api/v1/lakes/{lake}/routes/{id}': {
			get: operation('A route', answer(answers.route), { path: idPath }),
			put: operation('Replace a route', answer(answers.route), {
				path: idPath,
				...asSeen,
				requestBody: body(routeInput)
			}),
			delete: operation('Delete a route', gone(), { ...asSeen, path: idPath })
		},
		'/api/v1/lakes/{lake}/routes/{id}/holes': {
			get: operation(
				'Test holes along a route by the tightest published spacing',
				answer(answers.planned),
				{ path: idPath, query: holesQuery }
			)
		}
	};
}

function exchange(): ZodOpenApiPathsObject {
	return {
		'/api/v1/lakes/{lake}/places.gpx': {
			get: operation(
				'Weak spots and whole routes as GPX 1.1',
				{ '200': { description: 'Done', content: gpx } },
				{ path: lakePath }
			),
			post: operation('Take in a GPX file, whole or not at all', answer(answers.takenIn, '201'), {
				path: lakePath,
				query: gpxQuery,
				requestBody: { required: true, content: gpx }
			})
		},
		'/api/v1/lakes/{lake}/trip': {
			get: operation('What the trip sheet keeps', answer(answers.tripNote), { path: lakePath }),
			put: operation('Keep this instead; null is forgotten', answer(answers.tripNote), {
				path: lakePath,
				...asSeen,
				requestBody: body(tripNoteInput)
			})
		}
	};
}
