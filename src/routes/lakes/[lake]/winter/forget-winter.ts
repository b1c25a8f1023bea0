import { error, redirect, type RequestEvent } from '@sveltejs/kit';
import { isWinterId, type WinterId } from '#lib/model/calendar.ts';
import { deleteSiteWinter, restoreSiteWinter } from '#lib/server/services/winters.ts';
import { withSite } from '#lib/ui/site-link.ts';
import { found } from '../found.ts';
import { siteOf } from '../site-of.ts';

type Event = RequestEvent<{ lake: string }>;

/** Takes what is recorded of the winter out of use. */
export async function forgetWinter({ params, locals, url }: Event): Promise<never> {
	const winter = winterIn(url);
	await found(deleteSiteWinter(locals.context, params.lake, siteOf(url), winter));
	redirect(303, withSite(`?winter=${winter}&deleted=1`, siteOf(url)));
}

/** Takes that back. */
export async function restoreWinter({ params, locals, url }: Event): Promise<never> {
	const winter = winterIn(url);
	await found(restoreSiteWinter(locals.context, params.lake, siteOf(url), winter));
	redirect(303, withSite(`?winter=${winter}&stored=1`, siteOf(url)));
}

function winterIn(url: URL): WinterId {
	const winter = url.searchParams.get('winter') ?? '';
	if (!isWinterId(winter)) error(404, 'There is no such winter.');
	return winter;
}
