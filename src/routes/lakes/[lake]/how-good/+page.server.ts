import { asSeenBy } from '#lib/server/services/access/rough-place.ts';
import { isWinterId } from '#lib/model/calendar.ts';
import { howGood } from '#lib/server/services/how-good.ts';
import { found } from '../found.ts';
import { siteOf } from '../site-of.ts';
import type { PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ params, locals, url }) => {
	const asked = url.searchParams.get('winter') ?? '';
	const winter = isWinterId(asked) ? { winter: asked } : {};
	const good = await found(howGood(locals.context, params.lake, { ...winter, site: siteOf(url) }));
	return { good: { ...good, lake: asSeenBy(locals.viewer, good.lake) } };
};
