/** The site that is meant where an address names none. */
export const MAIN = 'main';

/** A site as a chooser offers it. */
export interface SiteChoice {
	id: string;
	name: string;
}

/**
 * The address with the site kept in it, that of the main one as it was.
 *
 * @example withSite('?/add', 'bay') // => '?/add&site=bay'
 */
export function withSite(address: string, site: string): string {
	if (site === MAIN) return address;
	const at = address.indexOf('#');
	const [path, mark] = at < 0 ? [address, ''] : [address.slice(0, at), address.slice(at)];
	return `${path}${path.includes('?') ? '&' : '?'}site=${encodeURIComponent(site)}${mark}`;
}
