import { fail, redirect } from '@sveltejs/kit';
import { asSeenBy } from '#lib/server/services/access/rough-place.ts';
import { lakeView } from '#lib/server/services/lake-view.ts';
import { listWeakSpots } from '#lib/server/services/places/weak-spots.ts';
import { readingInput } from '#lib/server/services/reading-input.ts';
import { deleteReading, listReadings, restoreReading } from '#lib/server/services/readings.ts';
import { clientIdIn, sendReadings } from '#lib/server/services/send-readings.ts';
import { isWinterId, winterOf } from '#lib/model/calendar.ts';
import { FormInput, formValues } from '#lib/ui/forms/form-input.ts';
import { addHoleRow } from '#lib/ui/forms/hole-input.ts';
import { readReading } from '#lib/ui/forms/reading-input.ts';
import { parseUnits, UNITS_COOKIE } from '#lib/ui/units-setting.ts';
import { withSite } from '#lib/ui/site-link.ts';
import { found } from '../found.ts';
import { siteOf } from '../site-of.ts';
import { estimateOn } from './estimate-on.ts';
import { importReadings } from './import-readings.ts';
import type { Actions, PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ params, locals, url }) => {
	const asked = url.searchParams.get('winter') ?? '';
	const view = await found(
		lakeView(locals.context, params.lake, {
			site: siteOf(url),
			...(isWinterId(asked) ? { winter: asked } : {})
		})
	);
	const { lake, site, today, winter, winters } = view;
	// Its own: a track’s view has those of the ice it was made on too.
	const readings = await listReadings(locals.context, lake.id, site, winter);
	return {
		lake: asSeenBy(locals.viewer, lake),
		today,
		winter,
		winters,
		readings: readings.toReversed(),
		places: [
			...new Set([
				...readings.flatMap(({ place }) => place ?? []),
				...(await listWeakSpots(locals.context, lake.id)).map(({ name }) => name)
			])
		],
		place: url.searchParams.get('place')?.slice(0, 200) ?? '',
		stored: url.searchParams.get('stored'),
		deleted: url.searchParams.get('deleted'),
		uploaded: Number(url.searchParams.get('uploaded') ?? 0)
	};
};

export const actions: Actions = {
	add: async ({ params, request, locals, cookies, url }) => {
		const site = siteOf(url);
		const typed = formValues(await request.formData());
		const input = new FormInput(typed);
		const units = parseUnits(cookies.get(UNITS_COOKIE));
		const on = input.text('on');
		const { today, estimate_m } = await found(estimateOn(locals.context, params.lake, site, on));
		const facts = { today, estimate_m, units };
		const reading = input.take(readingInput.safeParse(readReading(input, facts)));
		if (!reading) return fail(400, input.refusal);
		const clientId = clientIdIn(typed);
		const sent = { ...reading, ...(clientId === null ? {} : { clientId }) };
		const [id] = await sendReadings(locals.context, params.lake, site, [sent]);
		redirect(303, withSite(`?winter=${winterOf(reading.on)}&stored=${id}`, site));
	},
	hole: async ({ request }) => addHoleRow(formValues(await request.formData())),
	delete: async ({ params, request, locals, url }) => {
		const id = String((await request.formData()).get('id'));
		await found(deleteReading(locals.context, params.lake, id));
		const winter = url.searchParams.get('winter') ?? '';
		redirect(303, withSite(`?winter=${winter}&deleted=${id}`, siteOf(url)));
	},
	restore: async ({ params, request, locals, url }) => {
		const id = String((await request.formData()).get('id'));
		const { on } = await found(restoreReading(locals.context, params.lake, id));
		redirect(303, withSite(`?winter=${winterOf(on)}`, siteOf(url)));
	},
	upload: importReadings
};
