import type { RequestEvent } from '@sveltejs/kit';
import { promisify } from 'node:util';
import { brotliCompress, constants, gunzip, gzip, type BrotliOptions } from 'node:zlib';
import { viewOf } from '#lib/server/services/access/viewer.ts';
import { WhileUnchanged } from '#lib/server/services/while-unchanged.ts';
import { UNITS_COOKIE } from '#lib/ui/units-setting.ts';

/** Some twenty kilobytes each. */
const KEPT = 400;

/** What browsers take: Brotli is a sixth smaller, and is not offered over plain http. */
type Coding = 'br' | 'gzip';

interface KeptPage {
	zipped: Buffer<ArrayBuffer>;
	headers: [name: string, value: string][];
}

const pages = new WhileUnchanged<KeptPage>(KEPT);
const brotli = promisify<string, BrotliOptions, Buffer<ArrayBuffer>>(brotliCompress);
const ZIPS: Record<Coding, (text: string) => Promise<Buffer<ArrayBuffer>>> = {
	// Above 5 a page takes longer and gets hardly smaller.
	br: (text) => brotli(text, { params: { [constants.BROTLI_PARAM_QUALITY]: 5 } }),
	gzip: promisify<string, Buffer<ArrayBuffer>>(gzip)
};
const unzip = promisify<Buffer, Buffer<ArrayBuffer>>(gunzip);

type Resolve = (event: RequestEvent) => Response | Promise<Response>;

/**
 * The page of a lake as it was rendered before, as long as nothing of the lake has changed since and
 * the minute is the same; else as it is rendered now. Pages say in `locals.mayBeKept` that they may be.
 * Kept apart for each that may see something else; what is shown must not name who looks. Who asks
 * while it is being rendered gets the same.
 */
export async function keptPage(event: RequestEvent, resolve: Resolve): Promise<Response> {
	const { params, request, isDataRequest, locals, cookies, url } = event;
	const lake = params?.['lake'];
	if (lake === undefined || isDataRequest || request.method !== 'GET') return resolve(event);
	const { viewer } = locals;
	const takes = request.headers.get('accept-encoding') ?? '';
	const coding: Coding = /\bbr\b/.test(takes) ? 'br' : 'gzip';
	const seen = [url.href, cookies.get(UNITS_COOKIE), viewOf(viewer), viewer.way];
	const key = JSON.stringify([coding, ...seen]);
	// What fails here fails again where the page is made, and is told there.
	const kept = await pages.look(locals.context, lake, key).catch(() => null);
	if (kept?.value) return answer(kept.value, coding, takes);
	if (!kept) return resolve(event);
	let own: Response | null = null;
	const page = await kept.together(async () => {
		own = await resolve(event);
		if (!locals.mayBeKept || own.status !== 200 || own.headers.has('set-cookie')) return null;
		const page = { zipped: await ZIPS[coding](await own.text()), headers: [...own.headers] };
		kept.keep(page);
		return page;
	});
	return page ? answer(page, coding, takes) : (own ?? resolve(event));
}

async function answer(
	{ zipped, headers }: KeptPage,
	coding: Coding,
	takes: string
): Promise<Response> {
	const takesIt = new RegExp(`\\b${coding}\\b`).test(takes);
	const response = new Response(takesIt ? zipped : await unzip(zipped), { headers });
	response.headers.set('vary', 'Accept-Encoding');
	if (takesIt) response.headers.set('content-encoding', coding);
	response.headers.delete('content-length');
	return response;
}
