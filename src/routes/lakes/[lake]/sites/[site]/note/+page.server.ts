import { redirect } from '@sveltejs/kit';
import { getSite } from '#lib/server/services/sites.ts';
import { parseUnits, UNITS_COOKIE } from '#lib/ui/units-setting.ts';
import { lakeView } from '#lib/server/services/lake-view.ts';
import { wordsIn } from '#lib/ui/words.ts';
import { found } from '../../../found.ts';
import { planOf } from '../plan-of.ts';
import type { PageServerLoad } from './$types';

/** A plan as a sheet of paper. It is made of its address alone. */
export const load: PageServerLoad = async ({ params, locals, url, cookies }) => {
	const { context } = locals;
	const units = parseUnits(cookies.get(UNITS_COOKIE));
	const record = await found(getSite(context, params.lake, params.site));
	const options = { site: record.id, words: wordsIn(units), toWinterEnd: true };
	const { lake, today, asOf } = await lakeView(context, params.lake, options);
	const plan = await planOf(url, { context, lakeId: lake.id, site: record.id, today, units });
	if (!plan?.answer) redirect(303, `/lakes/${lake.id}/sites/${record.id}${url.search}#plan`);
	return {
		lake,
		record,
		today,
		asOf,
		answer: plan.answer,
		loadId: plan.values['load'] ?? '',
		query: url.search
	};
};
