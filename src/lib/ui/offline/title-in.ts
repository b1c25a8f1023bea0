const TITLE = /<title>([^<]*?)(?: · Frostledger)?<\/title>/;

/**
 * What a page calls itself, without the app's name; empty where it says nothing.
 * @example titleIn('<title>Elk &amp; Moose Lake · Frostledger</title>') // => 'Elk & Moose Lake'
 */
export function titleIn(html: string): string {
	const [, title = ''] = TITLE.exec(html) ?? [];
	return title.replaceAll('&lt;', '<').replaceAll('&gt;', '>').replaceAll('&amp;', '&').trim();
}
