import { json } from '@sveltejs/kit';
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

/** Refuses a request before anything of it was looked into: to a program, a page's script or a person. */
export function refusal({ request, url }: Asked, refused: Refused): Response {
	const { status, title, message, headers = {} } = refused;
	// As Kit tells the script of a form that something failed; what was typed stays in its fields.
	if (request.headers.get('x-sveltekit-action') === 'true') {
		return json({ type: 'error', status, error: { message } }, { status, headers });
	}
	if (request.headers.get('accept')?.includes('text/html') === true) {
		const type = { 'content-type': 'text/html; charset=utf-8' };
		return new Response(page(message), { status, headers: { ...headers, ...type } });
	}
	return problemResponse(new Problem(status, title, message, { headers }), url.pathname);
}

/** Without style and script, as no page of the app stands behind it. */
function page(message: string): string {
	return `<!doctype html>
<html lang="en">
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Not stored · Frostledger</title>
<h1>What you sent is not stored.</h1>
<p>${message}</p>
<p>Go back in your browser, where what you typed should still stand.</p>
</html>
`;
}
