import type { RequestEvent } from '@sveltejs/kit';
import { Problem, problemResponse } from './api/problem.ts';
import { isForm } from './limits/is-form.ts';

const READING = new Set(['GET', 'HEAD', 'OPTIONS']);

type Asked = Pick<RequestEvent, 'request' | 'url'>;

/**
 * Refuses a change that a page of another origin asks for, with the visitor's cookies or from within
 * the visitor's network; `null` where nothing is to be refused. Browsers name the origin with each
 * change, and `Sec-Fetch-Site` beside it; who names nothing of all this is a program, which holds
 * nobody's cookies but its own, and has no reason to send a form.
 */
export function refuseForeign({ request, url }: Asked): Response | null {
	if (READING.has(request.method)) return null;
	const from = foreignIn(request.headers, url);
	if (from === null) return null;
	const detail = `Changes are taken from this site only, and the request came from ${from}`;
	return problemResponse(new Problem(403, 'Forbidden', detail), url.pathname);
}

/** Who asks, where that is not this site itself. */
function foreignIn(headers: Headers, url: URL): string | null {
	const origin = headers.get('origin');
	if (origin !== null && origin !== url.origin) return origin;
	const site = headers.get('sec-fetch-site');
	// `none` is what a person typed or opened; a browser lets no page set this header.
	if (site !== null && site !== 'same-origin' && site !== 'none') return `a ${site} page`;
	const referrer = headers.get('referer');
	if (origin !== null) return null;
	if (referrer !== null && !isOf(referrer, url)) return 'a page elsewhere';
	const isNamed = referrer !== null || site !== null;
	return isForm(headers) && !isNamed ? 'a form that names no origin' : null;
}

function isOf(address: string, url: URL): boolean {
	return URL.canParse(address) && new URL(address).origin === url.origin;
}
