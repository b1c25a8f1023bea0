import type { RequestEvent } from '@sveltejs/kit';
import { promisify } from 'node:util';
import { gunzip, gzip } from 'node:zlib';
import { viewOf } from '#lib/server/services/access/viewer.ts';
import { WhileUnchanged } from '#lib/server/services/while-unchanged.ts';
import { UNITS_COOKIE } from '#lib/ui/units-setting.ts';

/** Some twenty kilobytes each. */
const KEPT = 400;

interface KeptPage {
	zipped: Buffer<ArrayBuffer>;
	headers: [name: string, value: string][];
}

const pages = new WhileUnchanged<KeptPage>(KEPT);
const zip = promisify<string, Buffer<ArrayBuffer>>(gzip);
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
	const key = JSON.stringify([url.href, cookies.get(UNITS_COOKIE), viewOf(viewer), viewer.way]);
	// What fails here fails again where the page is made, and is told there.
	const kept = await pages.look(locals.context, lake, key).catch(() => null);
	if (kept?.value) return answer(kept.value, request);
	if (!kept) return resolve(event);
	let own: Response | null = null;
	const page = await kept.together(async () => {
		own = await resolve(event);
		if (!locals.mayBeKept || own.status !== 200 || own.headers.has('set-cookie')) return null;
		const page = { zipped: await zip(await own.text()), headers: [...own.headers] };
		kept.keep(page);
		return page;
	});
	return page ? answer(page, request) : (own ?? resolve(event));
}

async function answer({ zipped, headers }: KeptPage, request: Request): Promise<Response> {
	const takesZipped = /\bgzip\b/.test(request.headers.get('accept-encoding') ?? '');
	const response = new Response(takesZipped ? zipped : await unzip(zipped), { headers });
	response.headers.set('vary', 'Accept-Encoding');
	if (takesZipped) response.headers.set('content-encoding', 'gzip');
	response.headers.delete('content-length');
	return response;
}
