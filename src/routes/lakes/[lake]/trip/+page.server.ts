import { fail } from '@sveltejs/kit';
import { lakeView } from '#lib/server/services/lake-view.ts';
import { listSites } from '#lib/server/services/sites.ts';
import { oneAtATime } from '#lib/server/services/one-at-a-time.ts';
import { placesView } from '#lib/server/services/places/places-view.ts';
import {
	getTripNote,
	keepTripNote,
	tripNoteInput
} from '#lib/server/services/places/trip-notes.ts';
import { localMinute } from '#lib/server/services/local-day.ts';
import { day } from '#lib/ui/format/day.ts';
import { FormInput, formValues } from '#lib/ui/forms/form-input.ts';
import { SHOWN } from '#lib/ui/forms/merge-shown.ts';
import { noteToKeep, readTrip } from '#lib/ui/forms/trip-input.ts';
import { parseUnits, UNITS_COOKIE } from '#lib/ui/units-setting.ts';
import { wordsIn } from '#lib/ui/words.ts';
import { found } from '../found.ts';
import { siteOf } from '../site-of.ts';
import { tripSheet } from './trip-sheet.ts';
import type { Actions, PageServerLoad } from './$types';

/** Which site and route, and whether with a vehicle, is in the address; who goes never is. */
export const load: PageServerLoad = async ({ params, locals, url, cookies }) => {
	const units = parseUnits(cookies.get(UNITS_COOKIE));
	const { context } = locals;
	const words = wordsIn(units);
	const places = await found(placesView(context, params.lake, words));
	const { lake } = places.view;
	const sites = await listSites(context, lake.id);
	const own = siteOf(url);
	const viewOf = (site: string) =>
		site === places.view.site
			? places.view
			: found(lakeView(context, lake.id, { toWinterEnd: true, words, site }));
	const view = await viewOf(own);
	const beside = sites
		.filter(({ id }) => id !== own)
		.map(async ({ id, name }) => ({ name, view: await viewOf(id) }));
	const siteName = sites.length > 1 ? (sites.find(({ id }) => id === own)?.name ?? own) : null;
	const asked = url.searchParams.get('route');
	const route = places.routes.find((each) => each.route.id === asked) ?? null;
	const forVehicle = url.searchParams.get('for') === 'vehicle';
	const now = localMinute(context.now(), lake.timeZone);
	const made = lake.today ? day(lake.today) : `${day(now.on)}, ${now.clock}`;
	return {
		lake: { id: lake.id, name: lake.name, isInvented: lake.isInvented },
		sheet: tripSheet(
			places,
			{ route, forVehicle, made, view, siteName, beside: await Promise.all(beside) },
			units
		),
		routes: places.routes.map((each) => ({ id: each.route.id, name: each.route.name })),
		route: route?.route.id ?? '',
		forVehicle,
		kept: await getTripNote(context, params.lake)
	};
};

export const actions: Actions = {
	/** Puts what was typed on the sheet, and keeps of it only what was ticked. */
	show: async ({ params, request, locals }) => {
		const input = new FormInput(formValues(await request.formData()));
		const typed = readTrip(input);
		const note = input.take(tripNoteInput.safeParse(typed.note));
		if (!note) return fail(400, { ...input.refusal, note: null });
		const { context } = locals;
		return oneAtATime(context, params.lake, async () => {
			const kept = noteToKeep(input, await found(getTripNote(context, params.lake)));
			if (input.issues.length > 0) return fail(400, { ...input.refusal, note: null });
			await found(keepTripNote(context, params.lake, tripNoteInput.parse(kept)));
			// From here on the page shows what is kept now.
			const { [SHOWN]: _, ...values } = input.values;
			return { values, issues: [], note };
		});
	}
};
