import { json } from '@sveltejs/kit';
import {
	getTripNote,
	keepTripNote,
	tripNoteInput
} from '#lib/server/services/places/trip-notes.ts';
import { readJson } from '../../../../body.ts';
import { endpoint, onlyMethods } from '../../../../endpoint.ts';

export const GET = endpoint(async ({ locals, params }) =>
	json(await getTripNote(locals.context, params['lake'] ?? ''))
);

export const PUT = endpoint(async ({ locals, params, request }) => {
	const note = await readJson(request, tripNoteInput);
	return json(await keepTripNote(locals.context, params['lake'] ?? '', note));
});

export const fallback = onlyMethods('GET', 'PUT');
