import { fail, redirect } from '@sveltejs/kit';
import { winterOf } from '#lib/model/calendar.ts';
import { lakeView } from '#lib/server/services/lake-view.ts';
import { listWeakSpots } from '#lib/server/services/places/weak-spots.ts';
import { readingInput } from '#lib/server/services/reading-input.ts';
import { getPosition, putPosition } from '#lib/server/services/reading-positions.ts';
import {
	editReading,
	leaveVersion,
	takeVersion,
	versionsAside
} from '#lib/server/services/edit-reading.ts';
import { findStanding } from '#lib/server/services/standing-reading.ts';
import { FormInput, formValues } from '#lib/ui/forms/form-input.ts';
import { addHoleRow } from '#lib/ui/forms/hole-input.ts';
import { readReading } from '#lib/ui/forms/reading-input.ts';
import { parseUnits, UNITS_COOKIE } from '#lib/ui/units-setting.ts';
import { withSite } from '#lib/ui/site-link.ts';
import { found } from '../../found.ts';
import { siteOf } from '../../site-of.ts';
import type { Actions, PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ params, locals, url }) => {
	const { context } = locals;
	const { reading, version } = await found(findStanding(context, params.lake, params.reading));
	const view = await found(
		lakeView(context, params.lake, { site: siteOf(url), winter: winterOf(reading.on) })
	);
	const spots = await listWeakSpots(context, params.lake);
	const named = view.readings.flatMap(({ place }) => place ?? []);
	const places = [...new Set([...named, ...spots.map(({ name }) => name)])];
	const position = await getPosition(context, params.lake, reading.id);
	return {
		lake: view.lake,
		today: view.today,
		reading,
		version,
		aside: await versionsAside(context, params.lake, reading.id),
		places,
		position,
		from: url.searchParams.get('from')
	};
};

export const actions: Actions = {
	store: async ({ params, request, locals, cookies, url }) => {
		const { context } = locals;
		const { reading: stored } = await found(findStanding(context, params.lake, params.reading));
		const { today } = await found(lakeView(context, params.lake));
		const input = new FormInput(formValues(await request.formData()));
		const units = parseUnits(cookies.get(UNITS_COOKIE));
		// The estimate of its day follows this very reading, so it cannot judge it.
		const facts = { today, units, estimate_m: null, stored };
		const reading = input.take(readingInput.safeParse(readReading(input, facts)));
		if (!reading) return fail(400, input.refusal);
		const edit = { change: reading, version: Number(input.text('version')) || null };
		const edited = await editReading(context, params.lake, stored.id, edit);
		if (edited.status === 'aside') redirect(303, withSite('?', siteOf(url)));
		const winter = winterOf(reading.on);
		const list =
			url.searchParams.get('from') === 'hole'
				? `/lakes/${params.lake}/at-the-hole?stored=${stored.id}`
				: `/lakes/${params.lake}/readings?winter=${winter}&stored=${stored.id}`;
		redirect(303, withSite(list, siteOf(url)));
	},
	take: async ({ params, request, locals, url }) => {
		const id = Number((await request.formData()).get('version'));
		await found(takeVersion(locals.context, params.lake, params.reading, id));
		redirect(303, withSite('?', siteOf(url)));
	},
	leave: async ({ params, request, locals, url }) => {
		const id = Number((await request.formData()).get('version'));
		await found(leaveVersion(locals.context, params.lake, params.reading, id));
		redirect(303, withSite('?', siteOf(url)));
	},
	forget: async ({ params, locals, url }) => {
		await found(putPosition(locals.context, params.lake, params.reading, null));
		redirect(303, withSite('?', siteOf(url)));
	},
	hole: async ({ request }) => addHoleRow(formValues(await request.formData()))
};
