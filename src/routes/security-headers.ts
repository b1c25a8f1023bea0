/** What a page may do; `kit.csp` has what it may load. */
const ALWAYS = {
	'x-content-type-options': 'nosniff',
	// Not `no-referrer`: with it a browser names no origin for our own forms either.
	'referrer-policy': 'same-origin',
	'x-frame-options': 'DENY',
	'cross-origin-opener-policy': 'same-origin',
	'cross-origin-resource-policy': 'same-origin',
	// The position is for a page on which somebody asks for it; a document lives on through many pages.
	'permissions-policy':
		'geolocation=(self), camera=(), microphone=(), display-capture=(), payment=(), usb=(), midi=(), ' +
		'accelerometer=(), gyroscope=(), magnetometer=(), publickey-credentials-get=()'
};

/** For what is no page: opened by itself it runs nothing, loads nothing and stands in no frame. */
const NO_PAGE = "default-src 'none'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

const YEAR_S = 365 * 24 * 60 * 60;

interface Asked {
	url: URL;
	/** Where others reach the app, `null` when not set. */
	address: string | null;
}

/** The answer with the headers that keep others out of it; what it says of itself stands. */
export function secured(response: Response, { url, address }: Asked): Response {
	const { headers } = response;
	for (const [name, value] of Object.entries(ALWAYS)) headers.set(name, value);
	if (!headers.has('content-security-policy')) headers.set('content-security-policy', NO_PAGE);
	if (!headers.has('cache-control')) headers.set('cache-control', keeping(headers));
	// Only for the name that was set up for it: localhost must stay reachable without https.
	if (address !== null && url.protocol === 'https:' && url.origin === address) {
		headers.set('strict-transport-security', `max-age=${YEAR_S}`);
	}
	return response;
}

/** Pages are kept by the visitor alone and asked for again each time; data is kept by nobody. */
function keeping(headers: Headers): string {
	const isPage = headers.get('content-type')?.startsWith('text/html') === true;
	return isPage ? 'private, no-cache' : 'private, no-store';
}
