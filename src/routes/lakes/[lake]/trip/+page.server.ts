import { fail } from '@sveltejs/kit';
import { placesView } from '#lib/server/services/places/places-view.ts';
import {
	getTripNote,
	keepTripNote,
	tripNoteInput
} from '#lib/server/services/places/trip-notes.ts';
import { localMinute } from '#lib/server/services/local-day.ts';
import { day } from '#lib/ui/format/day.ts';
import { FormInput, formValues } from '#lib/ui/forms/form-input.ts';
import { readTrip } from '#lib/ui/forms/trip-input.ts';
import { parseUnits, UNITS_COOKIE } from '#lib/ui/units-setting.ts';
import { wordsIn } from '#lib/ui/words.ts';
import { found } from '../found.ts';
import { tripSheet } from './trip-sheet.ts';
import type { Actions, PageServerLoad } from './$types';

/** Which route, and whether with a vehicle, is in the address; who goes never is. */
export const load: PageServerLoad = async ({ params, locals, url, cookies }) => {
	const units = parseUnits(cookies.get(UNITS_COOKIE));
	const places = await found(placesView(locals.context, params.lake, wordsIn(units)));
	const { lake } = places.view;
	const asked = url.searchParams.get('route');
	const route = places.routes.find((each) => each.route.id === asked) ?? null;
	const forVehicle = url.searchParams.get('for') === 'vehicle';
	const now = localMinute(locals.context.now(), lake.timeZone);
	const made = lake.today ? day(lake.today) : `${day(now.on)}, ${now.clock}`;
	return {
		lake: { id: lake.id, name: lake.name, isInvented: lake.isInvented },
		sheet: tripSheet(places, { route, forVehicle, made }, units),
		routes: places.routes.map((each) => ({ id: each.route.id, name: each.route.name })),
		route: route?.route.id ?? '',
		forVehicle,
		kept: await getTripNote(locals.context, params.lake)
	};
};

export const actions: Actions = {
	/** Puts what was typed on the sheet, and keeps of it only what was ticked. */
	show: async ({ params, request, locals }) => {
		const input = new FormInput(formValues(await request.formData()));
		const typed = readTrip(input);
		const note = input.take(tripNoteInput.safeParse(typed.note));
		if (!note) return fail(400, { ...input.refusal, note: null });
		const nobody = { party: null, back: null, told: null };
		await found(
			keepTripNote(locals.context, params.lake, {
				...(typed.keepsParty ? note : { ...note, ...nobody }),
				emergency: typed.keepsEmergency ? note.emergency : null
			})
		);
		return { values: input.values, issues: [], note };
	}
};
