import { REFUSED_PAGE_HEADERS, refusedPage } from '#lib/server/services/refused-page.ts';

/** A page of its own: what is refused must not run the page that was asked for. */
export function refusalPage({ status, detail }: { status: number; detail: string }): Response {
	const [what = detail, ...rest] = detail.split('; ');
	const remedy = rest.join('; ');
	const page = status === 401 ? signedOut(what) : notYours(what, remedy);
	return new Response(page, { status, headers: REFUSED_PAGE_HEADERS });
}

function signedOut(what: string): string {
	return refusedPage({
		title: 'Refused',
		heading: `${what}.`,
		more: [
			'What you typed still stands in the page before this one: sign in in another tab, go back, and send it again.'
		],
		links: [{ to: '/sign-in', text: 'Sign in', inNewTab: true }]
	});
}

function notYours(what: string, remedy: string): string {
	return refusedPage({
		title: 'Refused',
		heading: `${what}.`,
		more: remedy === '' ? [] : [`${remedy.charAt(0).toUpperCase()}${remedy.slice(1)}.`],
		links: [
			{ to: '/', text: 'To what you may see' },
			{ to: '/sign-in', text: 'Sign in as the owner' }
		]
	});
}
