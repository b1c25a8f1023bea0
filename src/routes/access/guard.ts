import type { RequestEvent } from '@sveltejs/kit';
import { STRANGER, viewerOf, type Viewer } from '#lib/server/services/access/viewer.ts';
import { SESSION_COOKIE } from './cookies.ts';
import { refuseOthersLog } from './logged-by.ts';
import { leastFor, mayDo } from './may.ts';
import { refuse } from './refuse.ts';

/**
 * Finds out who asks and puts it into `locals.viewer`. What the viewer may not do is answered here,
 * before anything of the route has run; `null` lets the route answer.
 */
export async function guard(event: RequestEvent): Promise<Response | null> {
	const { request, url, route, params, locals } = event;
	const least = leastFor({ route: route.id, method: request.method, url });
	locals.viewer = least === 'open' ? STRANGER : await askedBy(event);
	const others = least === 'open' ? null : await refuseOthersLog(event);
	if (others) return others;
	const verdict = mayDo(locals.viewer, least, params['lake']);
	return verdict === 'yes' ? null : refuse(event, verdict);
}

function askedBy({ request, cookies, locals }: RequestEvent): Promise<Viewer> {
	const bearer = /^Bearer +(\S+)$/i.exec(request.headers.get('authorization') ?? '');
	return viewerOf(locals.context, {
		session: cookies.get(SESSION_COOKIE) ?? null,
		token: bearer?.[1] ?? null
	});
}
