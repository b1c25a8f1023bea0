import { fail, redirect } from '@sveltejs/kit';
import { comingWeekend } from '#lib/model/early/weekend.ts';
import { lakeView } from '#lib/server/services/lake-view.ts';
import { oneAtATime } from '#lib/server/services/one-at-a-time.ts';
import { siteChange } from '#lib/server/services/site-input.ts';
import { deleteSite, getSite, listSites, updateSite } from '#lib/server/services/sites.ts';
import { getSiteWinter } from '#lib/server/services/winters.ts';
import { FormInput, formValues } from '#lib/ui/forms/form-input.ts';
import { mergeShown } from '#lib/ui/forms/merge-shown.ts';
import { parseUnits, UNITS_COOKIE } from '#lib/ui/units-setting.ts';
import { wordsIn } from '#lib/ui/words.ts';
import { found } from '../../found.ts';
import { kindTogether, readSite, refuseSite, siteValues, withoutIdleParent } from '../read-site.ts';
import { siteRow } from '../site-row.ts';
import { planOf } from './plan-of.ts';
import type { Actions, PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ params, locals, url, cookies }) => {
	const { context } = locals;
	const units = parseUnits(cookies.get(UNITS_COOKIE));
	const record = await found(getSite(context, params.lake, params.site));
	const options = { site: record.id, words: wordsIn(units), toWinterEnd: true };
	const view = await lakeView(context, params.lake, options);
	const { lake, today, winter, loads } = view;
	const own = await getSiteWinter(context, lake.id, record.id, winter);
	return {
		lake,
		today,
		winter,
		record,
		row: siteRow(record, view, await listSites(context, lake.id)),
		events: own.events,
		loads: loads.map(({ id, name }) => ({ id, name })),
		saturday: comingWeekend(today)[0],
		plan: await planOf(url, { context, lakeId: lake.id, site: record.id, today, units }),
		isMade: url.searchParams.has('made'),
		isStored: url.searchParams.has('stored')
	};
};

export const actions: Actions = {
	store: async ({ params, request, locals }) => {
		const { context } = locals;
		const input = new FormInput(withoutIdleParent(formValues(await request.formData())));
		return oneAtATime(context, params.lake, async () => {
			const before = await found(getSite(context, params.lake, params.site));
			const sites = await listSites(context, params.lake);
			mergeShown(input, () => siteValues(before), { together: [kindTogether(sites)] });
			const change = input.take(siteChange.safeParse(readSite(input)));
			if (!change) return fail(400, { form: 'site' as const, ...input.refusal });
			const done = await found(updateSite(context, params.lake, params.site, change));
			if (done.status === 'stored') redirect(303, '?stored');
			refuseSite(input, done.issues);
			return fail(400, { form: 'site' as const, ...input.refusal });
		});
	},
	delete: async ({ params, request, locals }) => {
		const input = new FormInput(formValues(await request.formData()));
		const done = await found(deleteSite(locals.context, params.lake, params.site));
		if (done.status === 'stored') {
			redirect(303, `/lakes/${params.lake}/sites?deleted=${params.site}`);
		}
		for (const { message } of done.issues) input.refuse('sure', message);
		return fail(400, { form: 'delete' as const, ...input.refusal });
	}
};
