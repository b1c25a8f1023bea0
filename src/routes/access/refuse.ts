import { json, type RequestEvent } from '@sveltejs/kit';
import { Problem, problemResponse } from '../api/problem.ts';
import { refusalPage } from './refusal-page.ts';
import type { Verdict } from './may.ts';

interface Refusal {
	status: number;
	title: string;
	/** A sentence without its full stop. */
	detail: string;
}

const REFUSALS: Readonly<Record<Exclude<Verdict, 'yes'>, Refusal>> = {
	signIn: {
		status: 401,
		title: 'Unauthorized',
		detail: 'Nobody is signed in here, or no longer; sign in and send it again'
	},
	no: {
		status: 403,
		title: 'Forbidden',
		detail: 'That is not yours to do or see here; ask the owner of this Frostledger'
	},
	nowhere: { status: 404, title: 'Not Found', detail: 'Nothing that you may see is here' }
};

/** Tells what is refused in the form that was asked for: JSON, a form's answer, a page. */
export function refuse(event: RequestEvent, verdict: Exclude<Verdict, 'yes'>): Response {
	const { request, url, isDataRequest } = event;
	const refusal = REFUSALS[verdict];
	const { status, title, detail } = refusal;
	if (url.pathname.startsWith('/api/')) {
		const headers = verdict === 'signIn' ? { 'www-authenticate': 'Bearer' } : {};
		return problemResponse(new Problem(status, title, detail, { headers }), url.pathname);
	}
	const message = `${detail}.`;
	if (isDataRequest) {
		if (verdict !== 'signIn') return json({ message }, { status });
		// As Kit tells its own redirects to a page that is open.
		return json({ type: 'redirect', location: signInAt(url) });
	}
	if (request.headers.get('x-sveltekit-action') === 'true')
		return json({ type: 'error', error: { message } }, { status });
	const isPage = request.headers.get('accept')?.includes('text/html') === true;
	if (verdict === 'signIn' && isPage && request.method === 'GET')
		return new Response(null, { status: 303, headers: { location: signInAt(url) } });
	return isPage ? refusalPage(refusal) : plain(status, message);
}

function signInAt({ pathname, search }: URL): string {
	return `/sign-in?${new URLSearchParams({ back: pathname + search })}`;
}

function plain(status: number, message: string): Response {
	const headers = { 'content-type': 'text/plain; charset=utf-8' };
	return new Response(`${message}\n`, { status, headers });
}
