import { redirect } from '@sveltejs/kit';
import { lakeOfGuestLink, look } from '#lib/server/services/access/guest-links.ts';
import { keepSession } from '../../access/cookies.ts';
import { found } from '../../lakes/[lake]/found.ts';
import type { RequestHandler } from './$types';

/** A guest's link: opens the lake. Who may do more here already stays who they are. */
export const GET: RequestHandler = async ({ locals, params, cookies, url }) => {
	const { context, viewer } = locals;
	const lake = await found(lakeOfGuestLink(context, params.secret));
	if (viewer.role === 'guest' || viewer.role === 'stranger')
		keepSession(cookies, url, await found(look(context, params.secret)));
	redirect(303, `/lakes/${lake}`);
};
