/** Of a lake: what is read and used at the hole. */
const OF_LAKE =
	/^\/lakes\/([\w-]+)(\/(sites(\/[\w-]+)?|loads|weak-spots(\/routes\/[\w-]+)?|trip|at-the-hole|going-on|coming-off|early-ice|readings(\/[\w-]+)?|what-if\.json))?$/;
/** Pages that need no lake. */
const APART = ['/', '/method', '/on-this-phone'];
/** Parameters that only tell what has just been done, and what the plain page shows without. */
const PASSING = [
	'stored',
	'deleted',
	'deletedRoute',
	'made',
	'from',
	'edit',
	'kept',
	'refused',
	'uploaded'
];

/** The lake whose page an address is; `null` where it is none that is kept. */
export function lakeOf({ pathname }: URL): string | null {
	const [, lake, page = ''] = OF_LAKE.exec(pathname) ?? [];
	return lake === undefined || lake === 'new' || page.endsWith('/new') ? null : lake;
}

/**
 * Under which name a page is kept on a device; `null` where it is not.
 * @example storeKey(new URL('http://localhost/lakes/pond?site=bay')) // => '/lakes/pond?site=bay'
 */
export function storeKey(url: URL): string | null {
	if (lakeOf(url) === null && !APART.includes(url.pathname)) return null;
	const site = siteOf(url);
	const isPlain = [...url.searchParams.keys()].every((name) => name === 'site');
	return isPlain ? url.pathname + site : null;
}

/** Which kept page answers an address where the server does not; `null` where none can. */
export function lookupKey(url: URL): string | null {
	const plain = new URL(url);
	for (const name of PASSING) plain.searchParams.delete(name);
	return storeKey(plain);
}

function siteOf({ searchParams }: URL): string {
	const site = searchParams.get('site');
	return site === null || site === 'main' ? '' : `?site=${encodeURIComponent(site)}`;
}
