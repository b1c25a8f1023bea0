import { fail, redirect } from '@sveltejs/kit';
import { signIn } from '#lib/server/services/access/sign-in.ts';
import { hasPassphrase } from '#lib/server/services/access/passphrase.ts';
import { DEVICE_COOKIE, keepDevice, keepSession } from '../access/cookies.ts';
import { ownPath } from '../access/own-path.ts';
import type { Actions, PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ locals, url }) => ({
	back: ownPath(url.searchParams.get('back'), url),
	isNeeded: await hasPassphrase(locals.context)
});

export const actions: Actions = {
	default: async ({ request, locals, cookies, url, getClientAddress }) => {
		const form = await request.formData();
		const outcome = await signIn(locals.context, {
			passphrase: String(form.get('passphrase') ?? ''),
			address: addressOf(getClientAddress),
			device: cookies.get(DEVICE_COOKIE) ?? null
		});
		if (outcome.status === 'wait') return fail(429, { wait_s: outcome.wait_s });
		if (outcome.status === 'wrong') return fail(403, { wait_s: null });
		keepSession(cookies, url, outcome.session);
		keepDevice(cookies, url, outcome.device);
		redirect(303, ownPath(form.get('back'), url));
	}
};

/** The adapter throws where it is told to read a header that the request lacks. */
function addressOf(read: () => string): string {
	try {
		return read();
	} catch {
		return 'unknown';
	}
}
