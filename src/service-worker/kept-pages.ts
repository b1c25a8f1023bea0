import { version } from '$service-worker';
import { heardServer } from '#lib/ui/offline/clock.ts';
import { lakeOf, storeKey } from '#lib/ui/offline/keepable.ts';
import { CLOCK, FACTS, PAGES_CACHE } from '#lib/ui/offline/names.ts';
import { titleIn } from '#lib/ui/offline/title-in.ts';
import { packed } from './packing.ts';

/** For all pages together, packed. With two builds the whole stays under 3 MB. */
const MOST_BYTES = 1_800_000;
const MADE_AT = /data-made-at="(\d+)"/;

/** Counts up when all is forgotten: what was asked for before is not kept after; without end once for good. */
let era = 0;

export function eraNow(): number {
	return era;
}

/**
 * Keeps an answer of the app itself, and nothing else: no error, no redirect, no page of a captive
 * portal, nothing that was asked for before all was forgotten.
 */
export async function keep(url: URL, response: Response, asked: number): Promise<boolean> {
	const key = storeKey(url);
	if (
		key === null ||
		response.status !== 200 ||
		response.redirected ||
		asked !== era ||
		era === Infinity
	)
		return false;
	const isInput = url.pathname.endsWith('.json');
	const type = response.headers.get('content-type') ?? '';
	if (!type.startsWith(isInput ? 'application/json' : 'text/html')) return false;
	const text = isInput ? '' : await response.clone().text();
	const madeAt = isInput ? String(Date.now()) : MADE_AT.exec(text)?.[1];
	if (madeAt === undefined) return false;
	const kept = await packed(response, {
		[FACTS.keptAt]: String(Date.now()),
		[FACTS.madeAt]: madeAt,
		[FACTS.title]: encodeURIComponent(titleIn(text)),
		[FACTS.build]: version
	});
	if (asked !== era) return false;
	await (await caches.open(PAGES_CACHE)).put(key, kept);
	await heardServer(isInput ? null : Number(madeAt));
	return true;
}

export async function findKept(key: string): Promise<Response | null> {
	// Opening the cache would make it anew where all was forgotten.
	return (await caches.match(key, { cacheName: PAGES_CACHE, ignoreVary: true })) ?? null;
}

/** All pages and inputs: of whoever was here before. */
export async function forgetPages(forGood = false): Promise<void> {
	era += forGood ? Infinity : 1;
	await caches.delete(PAGES_CACHE);
}

/** A page that is gone; with its lake's own page all of the lake. */
export async function forget(url: URL): Promise<void> {
	const lake = lakeOf(url);
	const key = storeKey(url);
	if (lake !== null && url.pathname === `/lakes/${lake}`) await forgetLake(lake);
	else if (key !== null) await (await caches.open(PAGES_CACHE)).delete(key);
}

async function forgetLake(lake: string): Promise<void> {
	const cache = await caches.open(PAGES_CACHE);
	for (const request of await cache.keys()) {
		if (lakeOf(new URL(request.url)) === lake) await cache.delete(request);
	}
}

interface KeptFacts {
	url: URL;
	keptAt_ms: number;
	bytes: number;
	build: string;
}

export async function listKept(): Promise<KeptFacts[]> {
	if (!(await caches.has(PAGES_CACHE))) return [];
	const cache = await caches.open(PAGES_CACHE);
	const all: KeptFacts[] = [];
	for (const request of await cache.keys()) {
		if (new URL(request.url).pathname === CLOCK) continue;
		const kept = (await cache.match(request, { ignoreVary: true })) ?? new Response();
		const { headers } = kept;
		// Bodies that nobody reads hold up the browser.
		await kept.body?.cancel();
		all.push({
			url: new URL(request.url),
			keptAt_ms: Number(headers.get(FACTS.keptAt)),
			bytes: Number(headers.get(FACTS.bytes)),
			build: headers.get(FACTS.build) ?? ''
		});
	}
	return all;
}

/** Lets go of the lakes that were opened longest ago, while there is too much; never of the given one. */
export async function makeRoom(lake: string): Promise<void> {
	const all = await listKept();
	const lakes = new Map<string, { bytes: number; at_ms: number }>();
	for (const { url, bytes, keptAt_ms } of all) {
		const id = lakeOf(url) ?? '';
		const known = lakes.get(id) ?? { bytes: 0, at_ms: 0 };
		lakes.set(id, { bytes: known.bytes + bytes, at_ms: Math.max(known.at_ms, keptAt_ms) });
	}
	let bytes = all.reduce((sum, each) => sum + each.bytes, 0);
	const oldest = [...lakes].toSorted(([, a], [, b]) => a.at_ms - b.at_ms);
	for (const [id, own] of oldest) {
		if (bytes <= MOST_BYTES) return;
		if (id === lake || id === '') continue;
		await forgetLake(id);
		bytes -= own.bytes;
	}
}
