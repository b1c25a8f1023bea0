import { FACTS } from '#lib/ui/offline/names.ts';
import { eraNow, findKept, forget, forgetPages, keep, makeRoom } from './kept-pages.ts';

/** A lake's pages are fetched anew no sooner than this, unless something of it was changed here. */
const FRESH_MS = 600_000;
/** The page that was opened comes first. */
const FIRST_MS = 1_500;
const PAGES = ['', '/at-the-hole', '/what-if.json', '/loads', '/sites', '/weak-spots', '/trip'];
const MORE_PAGES = ['/readings', '/going-on', '/coming-off', '/early-ice'];
/** Of each kind, so that nobody's list of places takes all the room. */
const MOST_LINKS = 8;

const changed = new Set<string>();
const underWay = new Set<string>();

/** Something of the lake was written from here: what is kept of it no longer stands. */
export function lakeChanged(lake: string): void {
	changed.add(lake);
}

/** Keeps what may be wanted of a lake at the hole, page by page, once it was opened; until all is forgotten. */
export async function gather(lake: string): Promise<void> {
	if (underWay.has(lake) || (await isFresh(lake))) return;
	underWay.add(lake);
	const began = eraNow();
	try {
		await wait(FIRST_MS);
		changed.delete(lake);
		const start = `/lakes/${lake}`;
		const open = [...PAGES, ...MORE_PAGES].map((page) => start + page);
		const named = new Set(open);
		for (let path = open.shift(); path !== undefined; path = open.shift()) {
			const html = began === eraNow() ? await fetchPage(path, began) : null;
			if (html === null) return;
			for (const link of linksIn(html, lake)) {
				if (!named.has(link)) open.push(link);
				named.add(link);
			}
		}
		await makeRoom(lake);
	} finally {
		underWay.delete(lake);
	}
}

/** The page's text; `null` where it is of no use to go on. */
async function fetchPage(path: string, asked: number): Promise<string | null> {
	let response: Response;
	try {
		response = await fetch(path, { headers: { accept: 'text/html' } });
	} catch {
		return null;
	}
	await refused(response, new URL(path, location.origin));
	if (response.redirected) return null;
	const html = response.ok ? await response.clone().text() : '';
	await keep(new URL(path, location.origin), response, asked);
	return html;
}

/** Whoever is no longer let in is shown nothing that was kept; what is gone is let go of. */
export async function refused(response: Response, url: URL): Promise<void> {
	const isElsewhere =
		response.type === 'opaqueredirect' ||
		(response.redirected && new URL(response.url).pathname.startsWith('/sign-in'));
	if (response.status === 401 || isElsewhere) await forgetPages();
	else if ([403, 404, 410].includes(response.status)) await forget(url);
}

async function isFresh(lake: string): Promise<boolean> {
	const kept = changed.has(lake) ? null : await findKept(`/lakes/${lake}/trip`);
	await kept?.body?.cancel();
	return kept !== null && Date.now() - Number(kept.headers.get(FACTS.keptAt)) < FRESH_MS;
}

/** Sites, routes and today's readings of the lake, as its own pages link to them. */
function linksIn(html: string, lake: string): string[] {
	const start = `/lakes/${lake}`;
	const found = (pattern: string) =>
		[...new Set([...html.matchAll(new RegExp(`"${start}${pattern}`, 'g'))].map((hit) => hit[1]))]
			.filter((id) => id !== undefined && id !== 'new' && id !== 'main')
			.slice(0, MOST_LINKS);
	const sites = found('/sites/([\\w-]+)"');
	return [
		...sites.flatMap((site) => [
			`${start}/sites/${site}`,
			...['', '/at-the-hole', '/what-if.json'].map((page) => `${start}${page}?site=${site}`)
		]),
		...found('/weak-spots/routes/([\\w-]+)["?]').map((id) => `${start}/weak-spots/routes/${id}`),
		...found('/readings/([\\w-]+)\\?from=hole').map((id) => `${start}/readings/${id}`)
	];
}

function wait(time_ms: number): Promise<void> {
	return new Promise((done) => setTimeout(done, time_ms));
}
