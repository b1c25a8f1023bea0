import { randomUUID } from 'node:crypto';
import type { Handle, HandleServerError, ServerInit } from '@sveltejs/kit';
import { building } from '$app/environment';
import { closeContext, getContext, startContext } from '#lib/server/context.ts';
import { loadDemo } from '#lib/server/services/demo.ts';

export const init: ServerInit = async () => {
	if (building) return;
	const context = await startContext(process.env);
	process.once('sveltekit:shutdown', () => void closeContext(context));
	await loadDemo(context);
};

const READING = new Set(['GET', 'HEAD', 'OPTIONS']);

export const handle: Handle = async ({ event, resolve }) => {
	const { request, url } = event;
	const origin = request.headers.get('origin');
	if (!READING.has(request.method) && origin !== null && origin !== url.origin) {
		return refuseOrigin(origin, url.pathname);
	}
	event.locals.context = getContext();
	const response = await resolve(event);
	response.headers.set('x-content-type-options', 'nosniff');
	response.headers.set('referrer-policy', 'same-origin');
	response.headers.set('x-frame-options', 'SAMEORIGIN');
	return response;
};

/** A page elsewhere may not change what is stored here. */
function refuseOrigin(origin: string, instance: string): Response {
	const problem = {
		type: 'about:blank',
		title: 'Forbidden',
		status: 403,
		detail: `Changes are taken from this site only, and the request came from ${origin}`,
		instance
	};
	const headers = { 'content-type': 'application/problem+json' };
	return new Response(JSON.stringify(problem), { status: 403, headers });
}

export const handleError: HandleServerError = ({ error, event, status, message }) => {
	if (status === 404) return { message };
	const id = randomUUID().slice(0, 8);
	console.error(`[${id}] ${event.request.method} ${event.url.pathname}`, error);
	return { message: 'Something failed here. Nothing that was stored is lost', id };
};
