import type { Handle, HandleServerError, ServerInit } from '@sveltejs/kit';
import { building } from '$app/environment';
import { closeContext, getContext, startContext } from '#lib/server/context.ts';
import { loadDemo } from '#lib/server/services/demo.ts';
import { logFailure } from '#lib/server/services/failure.ts';
import { isRefreshOn, startSchedule } from '#lib/server/services/refresh/schedule.ts';
import { Problem, problemResponse } from './routes/api/problem.ts';

export const init: ServerInit = async () => {
	if (building) return;
	const context = await startContext(process.env);
	const schedule = isRefreshOn(process.env) ? startSchedule(context) : null;
	process.once('sveltekit:shutdown', () => {
		void (schedule?.stop() ?? Promise.resolve()).then(() => closeContext(context));
	});
	await loadDemo(context);
};

const READING = new Set(['GET', 'HEAD', 'OPTIONS']);

export const handle: Handle = async ({ event, resolve }) => {
	const { request, url } = event;
	const origin = request.headers.get('origin');
	if (!READING.has(request.method) && origin !== null && origin !== url.origin) {
		const detail = `Changes are taken from this site only, and the request came from ${origin}`;
		return problemResponse(new Problem(403, 'Forbidden', detail), url.pathname);
	}
	event.locals.context = getContext();
	const response = await resolve(event);
	response.headers.set('x-content-type-options', 'nosniff');
	response.headers.set('referrer-policy', 'same-origin');
	response.headers.set('x-frame-options', 'SAMEORIGIN');
	return response;
};

export const handleError: HandleServerError = ({ error, event, status, message }) => {
	if (status < 500) return { message };
	const id = logFailure(`${event.request.method} ${event.url.pathname}`, error);
	return { message: 'Something failed here. Nothing that was stored is lost', id };
};
