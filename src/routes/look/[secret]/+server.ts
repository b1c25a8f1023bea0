import { redirect } from '@sveltejs/kit';
import { lakeOfGuestLink, look } from '#lib/server/services/access/guest-links.ts';
import { NotFound } from '#lib/server/services/not-found.ts';
import { keepSession } from '../../access/cookies.ts';
import { refusalPage } from '../../access/refusal-page.ts';
import type { RequestEvent, RequestHandler } from './$types';

/** A guest's link: opens the lake. Who may do more here already stays who they are. */
export const GET: RequestHandler = async (event) => {
	const lake = await opened(event).catch((cause: unknown) => {
		if (cause instanceof NotFound) return null;
		throw cause;
	});
	if (lake !== null) redirect(303, `/lakes/${lake}`);
	const detail = 'This link leads nowhere, or not any more; ask whoever gave it to you for another';
	return refusalPage({ status: 404, detail });
};

async function opened({ locals, params, cookies, url }: RequestEvent): Promise<string> {
	const { context, viewer } = locals;
	const lake = await lakeOfGuestLink(context, params.secret);
	if (viewer.role === 'guest' || viewer.role === 'stranger')
		keepSession(cookies, url, await look(context, params.secret));
	return lake;
}
