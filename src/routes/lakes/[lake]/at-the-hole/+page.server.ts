import { fail, redirect } from '@sveltejs/kit';
import { holeEffect, type HoleEffect } from '#lib/server/services/hole-effect.ts';
import { holesIn, logHole, readingsOn } from '#lib/server/services/at-the-hole.ts';
import { NotFound } from '#lib/server/services/not-found.ts';
import { listWeakSpots } from '#lib/server/services/places/weak-spots.ts';
import { readingInput } from '#lib/server/services/reading-input.ts';
import { clientIdIn } from '#lib/server/services/send-readings.ts';
import { positionInput } from '#lib/server/services/reading-positions.ts';
import { listReadings } from '#lib/server/services/readings.ts';
import { FormInput, formValues } from '#lib/ui/forms/form-input.ts';
import { readReading } from '#lib/ui/forms/reading-input.ts';
import { withSite } from '#lib/ui/site-link.ts';
import { parseUnits, UNITS_COOKIE } from '#lib/ui/units-setting.ts';
import { wordsIn } from '#lib/ui/words.ts';
import { found } from '../found.ts';
import { estimateOn } from '../readings/estimate-on.ts';
import { siteOf } from '../site-of.ts';
import { lakeToday } from '../lake-today.ts';
import { lastHole, otherPlaces, placeOf, placesOf } from './from-before.ts';
import type { Actions, PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ params, locals, url, cookies }) => {
	const { context } = locals;
	const site = siteOf(url);
	const { lake, today } = await found(lakeToday(context, params.lake));
	const readings = await found(listReadings(context, lake.id, site));
	const places = placesOf(readings);
	const words = wordsIn(parseUnits(cookies.get(UNITS_COOKIE)));
	const stored = url.searchParams.get('stored');
	const ofToday = readings.filter(({ on }) => on === today);
	return {
		lake,
		today,
		ofToday,
		seen: holesIn(ofToday),
		places,
		otherPlaces: otherPlaces(await listWeakSpots(context, lake.id), places),
		place: placeOf(readings, today),
		last: lastHole(readings),
		effect:
			stored === null ? null : await effectOf(holeEffect(context, lake.id, site, stored, words))
	};
};

/** A reading that was deleted meanwhile has none. */
async function effectOf(work: Promise<HoleEffect>): Promise<HoleEffect | null> {
	try {
		return await work;
	} catch (cause) {
		if (cause instanceof NotFound) return null;
		throw cause;
	}
}

export const actions: Actions = {
	default: async ({ params, request, locals, cookies, url }) => {
		const { context } = locals;
		const site = siteOf(url);
		const typed = formValues(await request.formData());
		const input = new FormInput({
			...typed,
			place: typed['otherPlace']?.trim() || (typed['place'] ?? '')
		});
		const units = parseUnits(cookies.get(UNITS_COOKIE));
		const facts = {
			units,
			...(await found(estimateOn(context, params.lake, site, input.text('on'))))
		};
		const reading = input.take(readingInput.safeParse(readReading(input, facts)));
		if (!reading) return fail(400, { values: typed, issues: input.issues });
		const ofDay = await readingsOn(context, params.lake, site, reading.on);
		const position = positionInput.safeParse({
			latitude: Number(typed['latitude'] || NaN),
			longitude: Number(typed['longitude'] || NaN)
		});
		const id = await logHole(context, params.lake, site, {
			reading,
			position: position.success ? position.data : null,
			// A form for another day than today cannot have seen that day's holes.
			seen: reading.on === facts.today ? Number(typed['seen'] ?? 0) : holesIn(ofDay),
			clientId: clientIdIn(typed)
		});
		redirect(303, withSite(`?stored=${id}`, site));
	}
};
