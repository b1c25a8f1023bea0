import { isIsoDate, isWinterId } from '#lib/model/calendar.ts';
import { comingOff } from '#lib/server/services/coming-off.ts';
import { lakeView } from '#lib/server/services/lake-view.ts';
import { getRemoval } from '#lib/server/services/removal.ts';
import { parseUnits, UNITS_COOKIE } from '#lib/ui/units-setting.ts';
import { wordsIn } from '#lib/ui/words.ts';
import { found } from '../found.ts';
import { siteOf } from '../site-of.ts';
import { comingOffPage } from './coming-off-page.ts';
import { storeRemoval } from './store-removal.ts';
import type { Actions, PageServerLoad } from './$types';

/** Asked as the lake's own page is, so that both go by one estimate. */
export const load: PageServerLoad = async ({ locals, params, url, cookies }) => {
	const winter = url.searchParams.get('winter');
	const asOf = url.searchParams.get('asOf');
	const view = await found(
		lakeView(locals.context, params.lake, {
			site: siteOf(url),
			...(winter && isWinterId(winter) ? { winter } : {}),
			...(asOf && isIsoDate(asOf) ? { asOf } : {}),
			toWinterEnd: true,
			words: wordsIn(parseUnits(cookies.get(UNITS_COOKIE)))
		})
	);
	const told = await comingOff(locals.context, view);
	const removal = await getRemoval(locals.context, view.lake.id, view.winter);
	return {
		page: comingOffPage(view, told, removal),
		isStored: url.searchParams.has('stored')
	};
};

export const actions: Actions = {
	store: async ({ params, request, locals, url }) =>
		storeRemoval(locals.context, params.lake, url, await request.formData())
};
