import type { RequestEvent } from '@sveltejs/kit';
import { isForm } from './limits/is-form.ts';
import { refusal } from './limits/refusal.ts';

const READING = new Set(['GET', 'HEAD', 'OPTIONS']);

type Asked = Pick<RequestEvent, 'request' | 'url'>;

/**
 * Refuses a change that a page of another origin asks for, with the visitor's cookies or from within
 * the visitor's network; `null` where nothing is to be refused. Browsers name the origin with each
 * change, and `Sec-Fetch-Site` beside it; who names nothing of all this is a program, which holds
 * nobody's cookies but its own, and has no reason to send a form.
 */
export function refuseForeign(event: Asked): Response | null {
	const { request, url } = event;
	if (READING.has(request.method)) return null;
	const from = foreignIn(request.headers, url);
	if (from === null) return null;
	const message =
		`Changes are taken from this site only, and the request came from ${from}. Open ${url.origin} and ` +
		'send it from there. Where that is the address in your browser already, a proxy in between has to ' +
		'pass on Host and X-Forwarded-Proto.';
	return refusal(event, { status: 403, title: 'Forbidden', message });
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
