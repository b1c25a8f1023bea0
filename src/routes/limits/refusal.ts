import { json } from '@sveltejs/kit';
import { REFUSED_PAGE_HEADERS, refusedPage } from '#lib/server/services/refused-page.ts';
import { Problem, problemResponse } from '../api/problem.ts';

interface Refused {
	status: number;
	/** As HTTP calls it. */
	title: string;
	/** What was wrong and what to do, in a sentence or two, for whoever asks. */
	message: string;
	headers?: Record<string, string>;
}

type Asked = { request: Request; url: URL };

const READING = new Set(['GET', 'HEAD']);

/** Refuses a request before anything of it was looked into: to a program, a page's script or a person. */
export function refusal({ request, url }: Asked, refused: Refused): Response {
	const { status, title, message, headers = {} } = refused;
	// As Kit tells the script of a form that something failed; what was typed stays in its fields.
	if (request.headers.get('x-sveltekit-action') === 'true') {
		return json({ type: 'error', status, error: { message } }, { status, headers });
	}
	const isPage = request.headers.get('accept')?.includes('text/html') === true;
	if (isPage && !url.pathname.startsWith('/api/')) {
		const page = READING.has(request.method) ? notShown(message) : notStored(message);
		return new Response(page, { status, headers: { ...headers, ...REFUSED_PAGE_HEADERS } });
	}
	return problemResponse(new Problem(status, title, message, { headers }), url.pathname);
}

function notStored(message: string): string {
	return refusedPage({
		title: 'Not stored',
		heading: 'What you sent is not stored.',
		more: [message, 'Go back in your browser, where what you typed should still stand.'],
		links: [{ to: '/', text: 'Back to the lakes' }]
	});
}

function notShown(message: string): string {
	return refusedPage({
		title: 'Not now',
		heading: 'This page cannot be shown at the moment.',
		more: [message],
		links: [{ to: '/', text: 'Back to the lakes' }]
	});
}
