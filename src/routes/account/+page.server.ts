import { fail, redirect } from '@sveltejs/kit';
import { closeSession, closeSessionsOf } from '#lib/server/services/access/sessions.ts';
import {
	listTokens,
	makeToken,
	revokeToken,
	tokenInput
} from '#lib/server/services/access/tokens.ts';
import type { Viewer } from '#lib/server/services/access/viewer.ts';
import { FormInput, formValues } from '#lib/ui/forms/form-input.ts';
import { forgetSession, SESSION_COOKIE } from '../access/cookies.ts';
import type { Actions, PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ locals: { context, viewer } }) => ({
	name: viewer.role === 'helper' ? viewer.name : null,
	tokens: viewer.role === 'guest' ? [] : await listTokens(context, personOf(viewer))
});

export const actions: Actions = {
	out: async ({ locals, cookies, url }) => {
		const secret = cookies.get(SESSION_COOKIE);
		if (secret !== undefined) await closeSession(locals.context, secret);
		forgetSession(cookies, url);
		redirect(303, '/sign-in');
	},
	everywhere: async ({ locals, cookies, url }) => {
		await closeSessionsOf(locals.context, personOf(locals.viewer));
		forgetSession(cookies, url);
		redirect(303, '/sign-in');
	},
	/** No redirect: its answer is the one time that the token is shown. */
	token: async ({ locals, request }) => {
		const input = new FormInput(formValues(await request.formData()));
		const wish = input.take(tokenInput.safeParse({ name: input.text('name') ?? '' }));
		if (!wish) return fail(400, input.refusal);
		return { token: await makeToken(locals.context, personOf(locals.viewer), wish.name) };
	},
	revoke: async ({ locals, request }) => {
		const id = String((await request.formData()).get('id'));
		await revokeToken(locals.context, personOf(locals.viewer), id);
		redirect(303, '/account');
	}
};

/** A helper's own; the owner has none. */
function personOf(viewer: Viewer): string | null {
	return viewer.role === 'helper' ? viewer.id : null;
}
