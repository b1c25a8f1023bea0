import { fail, type RequestEvent } from '@sveltejs/kit';
import { WEAK_SPOT_KINDS } from '#lib/model/places/weak-spot.ts';
import { LARGEST_GPX_BYTES } from '#lib/server/services/places/gpx/parse-gpx.ts';
import { placesFromGpx, type WaypointsAs } from '#lib/server/services/places/places-gpx.ts';
import { found } from '../found.ts';

/** Form action: takes in a GPX file, whole or not at all, and says what became of it. */
export async function importGpx({ params, request, locals }: RequestEvent<{ lake: string }>) {
	const form = await request.formData();
	const file = form.get('file');
	if (!(file instanceof File) || file.size === 0)
		return refused('The form came without a file, or with an empty one. Choose a GPX file.');
	if (file.size > LARGEST_GPX_BYTES)
		return refused(`${file.name} has more than 1 MB. Send one with fewer points, without tracks.`);
	const as = waypointsAs(form.get('waypointsAs'));
	const bytes = new Uint8Array(await file.arrayBuffer());
	const taken = await found(placesFromGpx(locals.context, params.lake, bytes, as));
	return taken.status === 'refused' ? refused(taken.reason) : { gpx: taken };
}

function waypointsAs(asked: unknown): WaypointsAs {
	return WEAK_SPOT_KINDS.find((kind) => kind === asked) ?? 'route';
}

function refused(reason: string) {
	return fail(400, { gpx: { status: 'refused' as const, reason } });
}
