import { MAIN } from '#lib/ui/site-link.ts';

/** The site that an address names, the main one without. */
export function siteOf(url: URL): string {
	return url.searchParams.get('site') || MAIN;
}
