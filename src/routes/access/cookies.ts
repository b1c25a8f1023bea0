import type { Cookies } from '@sveltejs/kit';
import type { NewSession } from '#lib/server/services/access/sessions.ts';
import { PERSON_COOKIE } from '#lib/ui/offline/names.ts';

export const SESSION_COOKIE = 'frostledger-session';
/** Of a browser that has signed in before, so that others who fail do not slow it down. */
export const DEVICE_COOKIE = 'frostledger-device';

const YEAR_S = 365 * 24 * 60 * 60;

/** No script reads it, no other site's form brings it, and on https it goes over nothing else. */
function options(url: URL) {
	const isSecure = url.protocol === 'https:';
	return { path: '/', httpOnly: true, sameSite: 'lax', secure: isSecure } as const;
}

export function keepSession(cookies: Cookies, url: URL, { secret, until }: NewSession): void {
	cookies.set(SESSION_COOKIE, secret, { ...options(url), expires: until });
	forgetPerson(cookies, url);
}

export function forgetSession(cookies: Cookies, url: URL): void {
	cookies.delete(SESSION_COOKIE, options(url));
	forgetPerson(cookies, url);
}

/** Whoever comes next is told to the device by the next page. */
function forgetPerson(cookies: Cookies, url: URL): void {
	cookies.delete(PERSON_COOKIE, { ...options(url), httpOnly: false });
}

export function keepDevice(cookies: Cookies, url: URL, secret: string): void {
	cookies.set(DEVICE_COOKIE, secret, { ...options(url), maxAge: YEAR_S });
}
