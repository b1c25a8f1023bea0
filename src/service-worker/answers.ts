import { lakeOf, lookupKey } from '#lib/ui/offline/keepable.ts';
import { gather, refused } from './gather.ts';
import { eraNow, findKept, keep } from './kept-pages.ts';
import { marked, nothingKept } from './mark.ts';
import { unpacked } from './packing.ts';
import { within } from './within.ts';

/** So long the network may take where there is a kept copy. */
const PATIENCE_MS = 3_000;
/** The same where it has just been found silent. */
const SHORT_PATIENCE_MS = 400;
const SILENT_FOR_MS = 10_000;
/** What a proxy answers when the app behind it does not. */
const NOBODY_THERE = [502, 504];

let silentAt_ms = 0;

/** A page: from the network, else as it is kept, which says so. */
export async function pageAnswer({ request }: FetchEvent, later: Later): Promise<Response> {
	const url = new URL(request.url);
	const key = lookupKey(url);
	const kept = key === null ? null : await findKept(key);
	const asked = eraNow();
	const coming = fetch(request).then((response) => {
		if (!NOBODY_THERE.includes(response.status)) later(keepPage(url, response.clone(), asked));
		return response;
	});
	const response = await inTime(coming, kept !== null);
	if (response && !NOBODY_THERE.includes(response.status)) return response;
	const hasTyped = url.searchParams.has('kept');
	if (kept) return marked(kept, hasTyped);
	return response ?? nothingKept(hasTyped);
}

async function keepPage(url: URL, response: Response, asked: number): Promise<void> {
	const lake = lakeOf(url);
	if (lake !== null) await refused(response, url);
	await keep(url, response, asked);
	if (lake !== null && response.status === 200) await gather(lake);
}

/**
 * What Kit fetches to go from page to page. It is never answered from what is kept: where the network
 * is silent Kit loads the whole page, which is.
 */
export async function dataAnswer({ request }: FetchEvent, later: Later): Promise<Response> {
	const url = new URL(request.url);
	url.pathname = url.pathname.replace(/\/?__data\.json$/, '') || '/';
	const own = [...url.searchParams.keys()].filter((name) => name.startsWith('x-sveltekit'));
	for (const name of own) url.searchParams.delete(name);
	const key = lookupKey(url);
	const kept = key === null ? null : await findKept(key);
	const isKept = kept !== null;
	await kept?.body?.cancel();
	const response = await inTime(fetch(request), isKept);
	const lake = lakeOf(url);
	if (response?.ok && lake !== null) later(gather(lake));
	return response ?? Response.error();
}

/** What the model runs on: kept for the day that it is asked for, or for any where none is named. */
export async function inputAnswer({ request }: FetchEvent, later: Later): Promise<Response> {
	const url = new URL(request.url);
	const plain = new URL(url);
	for (const name of ['winter', 'asOf']) plain.searchParams.delete(name);
	const key = lookupKey(plain);
	const kept = key === null ? null : await findKept(key);
	const asked = eraNow();
	const response = await inTime(fetch(request), kept !== null);
	if (response && !NOBODY_THERE.includes(response.status)) {
		later(keep(url, response.clone(), asked));
		return response;
	}
	const isOfTheDay = kept && (await isFor(kept.clone(), url.searchParams));
	return isOfTheDay ? unpacked(kept) : (response ?? Response.error());
}

async function isFor(kept: Response, asked: URLSearchParams): Promise<boolean> {
	const { asOf, record } = (await unpacked(kept).json()) as {
		asOf: string;
		record: { winter: string };
	};
	return (
		(asked.get('asOf') ?? asOf) === asOf && (asked.get('winter') ?? record.winter) === record.winter
	);
}

/** Work that goes on after the answer. */
export type Later = (work: Promise<unknown>) => void;

/** `null` where the network says nothing, or nothing in time while there is something else to show. */
async function inTime(coming: Promise<Response>, hasOther: boolean): Promise<Response | null> {
	const isSilent = Date.now() - silentAt_ms < SILENT_FOR_MS;
	const limit_ms = isSilent ? SHORT_PATIENCE_MS : PATIENCE_MS;
	const answer = await within(coming, hasOther ? limit_ms : undefined);
	silentAt_ms = answer === null ? Date.now() : 0;
	return answer;
}
