import { isIsoDate, isWinterId } from '#lib/model/calendar.ts';
import { goingOn } from '#lib/server/services/going-on.ts';
import { parseUnits, UNITS_COOKIE } from '#lib/ui/units-setting.ts';
import { wordsIn } from '#lib/ui/words.ts';
import { found } from '../found.ts';
import { siteOf } from '../site-of.ts';
import { goingOnPage } from './going-on-page.ts';
import type { PageServerLoad } from './$types';

/** Which winter and as of when are in the address, as on the lake's own page. */
export const load: PageServerLoad = async ({ locals, params, url, cookies }) => {
	const winter = url.searchParams.get('winter');
	const asOf = url.searchParams.get('asOf');
	const words = wordsIn(parseUnits(cookies.get(UNITS_COOKIE)));
	const answer = await found(
		goingOn(locals.context, params.lake, {
			site: siteOf(url),
			...(winter && isWinterId(winter) ? { winter } : {}),
			...(asOf && isIsoDate(asOf) ? { asOf } : {}),
			words
		})
	);
	return { page: goingOnPage(answer, words) };
};
