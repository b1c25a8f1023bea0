import { redirect } from '@sveltejs/kit';
import { closeSession, closeSessionsOf } from '#lib/server/services/access/sessions.ts';
import { forgetSession, SESSION_COOKIE } from '../access/cookies.ts';
import type { Actions, PageServerLoad } from './$types';

export const load: PageServerLoad = ({ locals: { viewer } }) => ({
	name: viewer.role === 'helper' ? viewer.name : null
});

export const actions: Actions = {
	out: async ({ locals, cookies, url }) => {
		const secret = cookies.get(SESSION_COOKIE);
		if (secret !== undefined) await closeSession(locals.context, secret);
		forgetSession(cookies, url);
		redirect(303, '/sign-in');
	},
	everywhere: async ({ locals, cookies, url }) => {
		const { viewer } = locals;
		await closeSessionsOf(locals.context, viewer.role === 'helper' ? viewer.id : null);
		forgetSession(cookies, url);
		redirect(303, '/sign-in');
	}
};
