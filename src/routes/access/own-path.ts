/** A wished path of this site, `/` for any other: `//host` and `/\host` lead elsewhere. */
export function ownPath(wish: unknown, url: URL): string {
	if (typeof wish !== 'string' || !wish.startsWith('/')) return '/';
	if (!URL.canParse(wish, url)) return '/';
	const target = new URL(wish, url);
	return target.origin === url.origin ? target.pathname + target.search : '/';
}
