import type { RequestEvent } from '@sveltejs/kit';
import type { WeakSpot } from '#lib/model/places/weak-spot.ts';
import {
	deleteWeakSpot,
	getWeakSpot,
	updateWeakSpot,
	weakSpotInput
} from '#lib/server/services/places/weak-spots.ts';
import { readJson } from '../../../../../body.ts';
import { endpoint, onlyMethods } from '../../../../../endpoint.ts';
import { changed, deleted, told, type Kept } from '../../../../../if-match.ts';
import { storedSpot } from '../../../../places.ts';

export const GET = endpoint((event) => told(kept(event)));

export const PUT = endpoint(async (event) => {
	const input = await readJson(event.request, weakSpotInput);
	const { lake = '', id = '' } = event.params;
	return changed(event, kept(event), async () =>
		storedSpot(await updateWeakSpot(event.locals.context, lake, id, input))
	);
});

export const DELETE = endpoint((event) => {
	const { lake = '', id = '' } = event.params;
	return deleted(event, kept(event), () => deleteWeakSpot(event.locals.context, lake, id));
});

export const fallback = onlyMethods('GET', 'PUT', 'DELETE');

function kept({ locals, params }: RequestEvent): Kept<WeakSpot> {
	const { lake = '', id = '' } = params;
	return { line: lake, stands: () => getWeakSpot(locals.context, lake, id) };
}
