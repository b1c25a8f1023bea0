/** Names of what is kept on a device, for the page and the service worker alike. */

export const PAGES_CACHE = 'frostledger-pages';
export const BUILD_CACHE = 'frostledger-build-';
/** Among the pages: the latest that clocks were seen to tell. */
export const CLOCK = '/frostledger-clock';
/** In the cache of a build: how many files and bytes it has. */
export const BUILD_SUMMARY = '/frostledger-build-summary';
export const DATABASE = 'frostledger';
/** Asks the browser to send what waits as soon as there is a connection. */
export const SEND_TAG = 'send-readings';
/** Tells open pages that something was sent, or that a newer copy has come. */
export const CHANNEL = 'frostledger';

/** Who signed in on this device last, for its own pages to read: never asked who may do what. */
export const PERSON_COOKIE = 'frostledger-person';
/** The header by which a device says who logged what it sends: nobody else's session stores it. */
export const LOGGED_BY = 'frostledger-logged-by';

/** What the service worker may be told by a page. */
export type ToServiceWorker =
	/** Empties all pages and inputs that are kept; answers on the port once it is done. */
	| { kind: 'forgetPages' }
	/** The same, and keeps nothing any more. */
	| { kind: 'forgetAll' }
	/** A page was in view before there was anybody to keep it. */
	| { kind: 'opened'; path: string };

/** What a kept page or file has beside its body. */
export const FACTS = {
	keptAt: 'x-kept-at',
	madeAt: 'x-made-at',
	bytes: 'x-bytes',
	/** As the page calls itself, in the letters of an address. */
	title: 'x-title',
	build: 'x-build',
	plain: 'x-plain'
} as const;
