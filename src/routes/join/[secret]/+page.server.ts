import { redirect } from '@sveltejs/kit';
import { join, nameOfJoinLink } from '#lib/server/services/access/people.ts';
import { keepSession } from '../../access/cookies.ts';
import { found } from '../../lakes/[lake]/found.ts';
import type { Actions, PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ locals, params, setHeaders }) => {
	setHeaders({ 'cache-control': 'no-store' });
	return { name: await found(nameOfJoinLink(locals.context, params.secret)) };
};

export const actions: Actions = {
	/** By a button and not by opening the link: programs that look ahead at links must not use it up. */
	default: async ({ locals, params, cookies, url }) => {
		keepSession(cookies, url, await found(join(locals.context, params.secret)));
		redirect(303, '/');
	}
};
