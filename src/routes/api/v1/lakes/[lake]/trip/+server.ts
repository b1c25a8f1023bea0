import type { RequestEvent } from '@sveltejs/kit';
import {
	getTripNote,
	keepTripNote,
	tripNoteInput,
	type TripNote
} from '#lib/server/services/places/trip-notes.ts';
import { readJson } from '../../../../body.ts';
import { endpoint, onlyMethods } from '../../../../endpoint.ts';
import { changed, told, type Kept } from '../../../../if-match.ts';

export const GET = endpoint((event) => told(kept(event)));

export const PUT = endpoint(async (event) => {
	const note = await readJson(event.request, tripNoteInput);
	const { lake = '' } = event.params;
	return changed(event, kept(event), () => keepTripNote(event.locals.context, lake, note));
});

export const fallback = onlyMethods('GET', 'PUT');

function kept({ locals, params }: RequestEvent): Kept<TripNote> {
	const { lake = '' } = params;
	return { line: lake, stands: () => getTripNote(locals.context, lake) };
}
