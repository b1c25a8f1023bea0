import { fail, redirect } from '@sveltejs/kit';
import { seesPlaces } from '#lib/server/services/access/viewer.ts';
import { listReadings } from '#lib/server/services/readings.ts';
import { placesView } from '#lib/server/services/places/places-view.ts';
import { deleteRoute, restoreRoute } from '#lib/server/services/places/routes.ts';
import {
	addWeakSpot,
	deleteWeakSpot,
	restoreWeakSpot,
	weakSpotInput
} from '#lib/server/services/places/weak-spots.ts';
import { FormInput, formValues } from '#lib/ui/forms/form-input.ts';
import { readSpot } from '#lib/ui/forms/spot-input.ts';
import { parseUnits, UNITS_COOKIE } from '#lib/ui/units-setting.ts';
import { wordsIn } from '#lib/ui/words.ts';
import { found } from '../found.ts';
import { todayAt } from '../today-at.ts';
import { brokeHere, checkedToday } from './from-reading.ts';
import { importGpx } from './import-gpx.ts';
import { placesPage, withoutPositions } from './places-page.ts';
import { refuseSpot } from './refusals.ts';
import type { Actions, PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ params, locals, url, cookies, parent }) => {
	const words = wordsIn(parseUnits(cookies.get(UNITS_COOKIE)));
	const view = await found(placesView(locals.context, params.lake, words));
	const { sites } = await parent();
	const named = [];
	for (const { id } of sites) named.push(...(await listReadings(locals.context, params.lake, id)));
	const taken = new Set(view.spots.map(({ spot }) => spot.name));
	const places = new Set(named.flatMap(({ place }) => place ?? []));
	return {
		page: seesPlaces(locals.viewer) ? placesPage(view) : withoutPositions(placesPage(view)),
		seesPlaces: seesPlaces(locals.viewer),
		places: [...places].filter((place) => !taken.has(place)),
		stored: url.searchParams.get('stored'),
		deleted: url.searchParams.get('deleted'),
		deletedRoute: url.searchParams.get('deletedRoute')
	};
};

export const actions: Actions = {
	add: async ({ params, request, locals }) => {
		const input = new FormInput(formValues(await request.formData()));
		const today = await found(todayAt(locals.context, params.lake));
		const spot = input.take(weakSpotInput.safeParse(readSpot(input, today)));
		if (!spot) return fail(400, input.refusal);
		const stored = await found(addWeakSpot(locals.context, params.lake, spot));
		if (stored.status !== 'stored') return refuseSpot(input, stored);
		redirect(303, `?stored=${stored.spot.id}`);
	},
	broke: brokeHere,
	checked: checkedToday,
	delete: async ({ params, request, locals }) => {
		const id = String((await request.formData()).get('id'));
		await found(deleteWeakSpot(locals.context, params.lake, id));
		redirect(303, `?deleted=${id}`);
	},
	restore: async ({ params, request, locals }) => {
		const id = String((await request.formData()).get('id'));
		const restored = await found(restoreWeakSpot(locals.context, params.lake, id));
		if (restored.status !== 'stored') {
			const input = new FormInput({});
			return refuseSpot(input, restored);
		}
		redirect(303, `?stored=${id}`);
	},
	deleteRoute: async ({ params, request, locals }) => {
		const id = String((await request.formData()).get('id'));
		await found(deleteRoute(locals.context, params.lake, id));
		redirect(303, `?deletedRoute=${id}`);
	},
	restoreRoute: async ({ params, request, locals }) => {
		const id = String((await request.formData()).get('id'));
		await found(restoreRoute(locals.context, params.lake, id));
		redirect(303, `?stored=${id}`);
	},
	gpx: importGpx
};
