import { isIsoDate, isWinterId } from '#lib/model/calendar.ts';
import { lakeView } from '#lib/server/services/lake-view.ts';
import { parseUnits, UNITS_COOKIE } from '#lib/ui/units-setting.ts';
import { wordsIn } from '#lib/ui/words.ts';
import { found } from './found.ts';
import { lakePage } from './lake-page.ts';
import { siteOf } from './site-of.ts';
import type { PageServerLoad } from './$types';

/** Which winter and as of when are in the address, so that a link is a view. */
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
	locals.mayBeKept = !view.standsIn;
	return { page: lakePage(view) };
};
