import type { IncomingMessage, ServerResponse } from 'node:http';
import { REFUSED_PAGE_HEADERS, refusedPage } from '#lib/server/services/refused-page.ts';

interface Refusal {
	status: number;
	title: string;
	/** A sentence without its full stop. */
	what: string;
	remedy: string;
}

export function refuseHost(request: IncomingMessage, response: ServerResponse): void {
	refuse(request, response, {
		status: 421,
		title: 'Misdirected Request',
		what: 'This name is not one that Frostledger answers to',
		remedy: 'Open it as localhost, or list the name in FROSTLEDGER_HOSTS.'
	});
}

export function notFound(request: IncomingMessage, response: ServerResponse): void {
	refuse(request, response, {
		status: 404,
		title: 'Not Found',
		what: 'Nothing is here',
		remedy: 'The address may be mistyped.'
	});
}

/** To a person a page, to the API’s callers problem details, to others a line of text. */
function refuse({ url = '/', headers }: IncomingMessage, response: ServerResponse, said: Refusal) {
	const { status, title, what, remedy } = said;
	response.setHeader('cache-control', 'no-store');
	response.setHeader('x-content-type-options', 'nosniff');
	const answer = (kind: Readonly<Record<string, string>>, body: string) =>
		response.writeHead(status, kind).end(body);
	const detail = `${what}. ${remedy}`;
	if (url.startsWith('/api/')) {
		const [instance] = url.split('?', 1);
		const problem = { type: 'about:blank', title, status, detail, instance };
		return answer({ 'content-type': 'application/problem+json' }, JSON.stringify(problem));
	}
	if (headers.accept?.includes('text/html')) {
		const page = refusedPage({ title: 'Refused', heading: `${what}.`, more: [remedy] });
		return answer(REFUSED_PAGE_HEADERS, page);
	}
	return answer({ 'content-type': 'text/plain; charset=utf-8' }, `${detail}\n`);
}
