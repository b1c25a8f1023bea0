import { json } from '@sveltejs/kit';
import { asSeenBy } from '#lib/server/services/access/rough-place.ts';
import { isIsoDate, isWinterId } from '#lib/model/calendar.ts';
import { outlookInput } from '#lib/server/services/lake-view.ts';
import { shownIds } from '#lib/server/services/shown-loads.ts';
import { found } from '../found.ts';
import { siteOf } from '../site-of.ts';
import type { RequestHandler } from './$types';

/** What the page's estimate was made from, for a browser that runs the model itself. */
export const GET: RequestHandler = async ({ params, locals, url }) => {
	const winter = url.searchParams.get('winter');
	const asOf = url.searchParams.get('asOf');
	const input = await found(
		outlookInput(locals.context, params.lake, {
			site: siteOf(url),
			...(winter && isWinterId(winter) ? { winter } : {}),
			...(asOf && isIsoDate(asOf) ? { asOf } : {}),
			toWinterEnd: true
		})
	);
	const shown = await shownIds(locals.context, params.lake, input.loads);
	const loads = input.loads.filter(({ id }) => shown.includes(id));
	const lake = asSeenBy(locals.viewer, input.lake);
	return json({ ...input, lake, loads }, { headers: { 'cache-control': 'no-store' } });
};
