import type { Handle, HandleServerError, RequestEvent, ServerInit } from '@sveltejs/kit';
import { building } from '$app/environment';
import { closeContext, getContext, startContext } from '#lib/server/context.ts';
import { requirePassphraseWhereReachable } from '#lib/server/services/access/exposure.ts';
import { startEstimating } from '#lib/server/services/estimates/estimate.ts';
import { startClearing } from '#lib/server/services/history/clear-away.ts';
import { loadDemo } from '#lib/server/services/demo.ts';
import { logFailure } from '#lib/server/services/failure.ts';
import { troubleOf } from '#lib/server/services/storage-trouble.ts';
import { isRefreshOn, startSchedule } from '#lib/server/services/refresh/schedule.ts';
import { startTelling } from '#lib/server/services/telling/schedule.ts';
import { PERSON_COOKIE } from '#lib/ui/offline/names.ts';
import { guard } from './routes/access/guard.ts';
import { personCookie } from './routes/access/logged-by.ts';
import { recorded } from './routes/access/recorded.ts';
import { keptPage } from './routes/kept-pages.ts';
import { refuse, withRoom } from './routes/limits/gate.ts';
import { toldInTrouble } from './routes/limits/in-trouble.ts';
import { secured } from './routes/security-headers.ts';

export const init: ServerInit = async () => {
	if (building) return;
	const context = await startContext(process.env);
	await requirePassphraseWhereReachable(context, process.env);
	const estimating = await startEstimating();
	const schedule = isRefreshOn(process.env) ? startSchedule(context) : null;
	const telling = startTelling(context);
	const clearing = startClearing(context);
	// Whoever stops the server may wait for what this returns.
	process.once('sveltekit:shutdown', async () => {
		clearing.stop();
		await Promise.all([schedule?.stop(), telling.stop()]);
		await estimating.stop();
		await closeContext(context);
	});
	await loadDemo(context);
};

export const handle: Handle = async (input) => {
	const { event } = input;
	const { address, now } = (event.locals.context = getContext());
	const response =
		refuse(event, now()) ??
		(await toldInTrouble(event, () => withRoom(event, () => answered(input))));
	return secured(response, { url: event.url, address });
};

async function answered({ event, resolve }: Parameters<Handle>[0]): Promise<Response> {
	const resolved =
		(await guard(event)) ?? (await recorded(event, () => keptPage(event, stamped(resolve))));
	const response = event.locals.trouble ? unavailable(resolved) : resolved;
	// What one viewer is shown no cache in between may show to another.
	if (event.locals.viewer.way === 'session') response.headers.append('vary', 'Cookie');
	tellPerson(event, response);
	return response;
}

/** Not with what may be a sign-in or sign-out, whose own answer says what the device is to know. */
function tellPerson({ request, locals, cookies, url }: RequestEvent, response: Response): void {
	if (request.method !== 'GET') return;
	const known = cookies.get(PERSON_COOKIE);
	const cookie = personCookie(locals.viewer, known, url.protocol === 'https:');
	if (cookie !== null) response.headers.append('set-cookie', cookie);
}

/** Each page says when it was made, so that a copy of it cannot pass for fresh. */
function stamped(resolve: Parameters<Handle>[0]['resolve']) {
	return (event: RequestEvent) =>
		resolve(event, {
			transformPageChunk: ({ html }) => html.replace('%frostledger.madeAt%', String(Date.now()))
		});
}

/** Kit answers 500 to whatever it did not expect. */
function unavailable({ body, status, headers }: Response): Response {
	return new Response(body, { status: status === 500 ? 503 : status, headers });
}

export const handleError: HandleServerError = ({ error, event, status, message }) => {
	if (status < 500) return { message };
	const id = logFailure(`${event.request.method} ${event.url.pathname}`, error);
	const trouble = troubleOf(error);
	if (trouble !== null) {
		event.locals.trouble = trouble;
		return { message: `${trouble}.`, id, isTrouble: true };
	}
	return { message: 'Something failed here. Nothing that was stored is lost', id };
};
