import { fail, redirect } from '@sveltejs/kit';
import { lakeView } from '#lib/server/services/lake-view.ts';
import { getLake } from '#lib/server/services/lakes.ts';
import { newSite } from '#lib/server/services/site-input.ts';
import {
	createSite,
	listDeletedSites,
	listSites,
	restoreSite
} from '#lib/server/services/sites.ts';
import { FormInput, formValues } from '#lib/ui/forms/form-input.ts';
import { parseUnits, UNITS_COOKIE } from '#lib/ui/units-setting.ts';
import { wordsIn } from '#lib/ui/words.ts';
import { found } from '../found.ts';
import { readSite, refuseSite } from './read-site.ts';
import { siteRow } from './site-row.ts';
import type { Actions, PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ params, locals, url, cookies }) => {
	const { context } = locals;
	const lake = await found(getLake(context, params.lake));
	const sites = await listSites(context, lake.id);
	const words = wordsIn(parseUnits(cookies.get(UNITS_COOKIE)));
	const views = await Promise.all(
		// As the page of each site asks, so that one of them finds the other's estimate made.
		sites.map((site) => lakeView(context, lake.id, { site: site.id, words, toWinterEnd: true }))
	);
	return {
		lake,
		rows: sites.flatMap((site, index) => {
			const view = views[index];
			return view ? [siteRow(site, view, sites)] : [];
		}),
		deleted: await listDeletedSites(context, lake.id),
		justDeleted: url.searchParams.get('deleted')
	};
};

export const actions: Actions = {
	add: async ({ params, request, locals }) => {
		const input = new FormInput(formValues(await request.formData()));
		const site = input.take(newSite.safeParse(readSite(input)));
		if (!site) return fail(400, input.refusal);
		const made = await found(createSite(locals.context, params.lake, site));
		if (made.status === 'stored') {
			redirect(303, `/lakes/${params.lake}/sites/${made.site.id}?made`);
		}
		refuseSite(input, made.issues);
		return fail(400, input.refusal);
	},
	restore: async ({ params, request, locals }) => {
		const id = String((await request.formData()).get('id'));
		const done = await found(restoreSite(locals.context, params.lake, id));
		if (done.status === 'stored') redirect(303, '?');
		const why = done.issues.map(({ message }) => message).join(' ');
		return fail(409, { refused: why });
	}
};
