import { fail, redirect } from '@sveltejs/kit';
import { isIsoDate, isWinterId } from '#lib/model/calendar.ts';
import type { Context } from '#lib/server/context.ts';
import { lakeView } from '#lib/server/services/lake-view.ts';
import { oneAtATime } from '#lib/server/services/one-at-a-time.ts';
import { getRemoval, loadIds, removalInputFor, saveRemoval } from '#lib/server/services/removal.ts';
import { FormInput, formValues } from '#lib/ui/forms/form-input.ts';
import { mergeShown } from '#lib/ui/forms/merge-shown.ts';
import { LEAD, readRemoval, removalValues } from '#lib/ui/leaving/removal-input.ts';
import { withSite } from '#lib/ui/site-link.ts';
import { found } from '../found.ts';
import { siteOf } from '../site-of.ts';

/** Stores the removal date and the leads, or says at their fields why not. */
export async function storeRemoval(context: Context, lakeId: string, url: URL, form: FormData) {
	const asked = url.searchParams.get('winter') ?? '';
	const site = siteOf(url);
	const winter = isWinterId(asked)
		? asked
		: (await found(lakeView(context, lakeId, { site }))).winter;
	const loads = await found(loadIds(context, lakeId));
	const input = new FormInput(formValues(form));
	const isStored = await oneAtATime(context, lakeId, async () => {
		const stands = await getRemoval(context, lakeId, winter);
		const leads = stands.leads.map(({ load, lead_d }) => ({ id: load, lead_d }));
		mergeShown(input, () => removalValues(stands.removalOn, leads));
		const typed = readRemoval(input, loads);
		const parsed = removalInputFor(winter, loads).safeParse(typed);
		if (!parsed.success && input.issues.length === 0)
			for (const { path, message } of parsed.error.issues) {
				const [list, index] = path;
				const load = list === 'leads' ? typed.leads[Number(index)]?.load : undefined;
				input.refuse(load === undefined ? 'removalOn' : `${LEAD}${load}`, `This ${message}.`);
			}
		if (!parsed.success || input.issues.length > 0) return false;
		await saveRemoval(context, lakeId, winter, parsed.data);
		return true;
	});
	if (!isStored) return fail(400, input.refusal);
	const asOf = url.searchParams.get('asOf') ?? '';
	const day = isIsoDate(asOf) ? `&asOf=${asOf}` : '';
	redirect(303, withSite(`?winter=${winter}${day}&stored`, site));
}
