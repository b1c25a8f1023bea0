import { fail, redirect } from '@sveltejs/kit';
import {
	addGuestLink,
	guestLinkInput,
	listGuestLinks,
	revokeGuestLink
} from '#lib/server/services/access/guest-links.ts';
import {
	addHelper,
	helperInput,
	listHelpers,
	removeHelper,
	renewJoinLink
} from '#lib/server/services/access/people.ts';
import { closeAllSessions } from '#lib/server/services/access/sessions.ts';
import { listLakes } from '#lib/server/services/lakes.ts';
import { FormInput, formValues } from '#lib/ui/forms/form-input.ts';
import { found } from '../lakes/[lake]/found.ts';
import type { Actions, PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ locals: { context }, url }) => ({
	helpers: await listHelpers(context),
	guests: await listGuestLinks(context),
	lakes: (await listLakes(context)).map(({ id, name }) => ({ id, name })),
	/** Without one a link leads no further than this machine. */
	isReachable: context.reachableBy !== null,
	now: context.now(),
	done: url.searchParams.get('done')
});

export const actions: Actions = {
	/** No redirect here and below: the answer is the one time that a link is shown. */
	helper: async ({ request, locals, url }) => {
		const input = new FormInput(formValues(await request.formData()));
		const wish = { name: input.text('name') ?? '', joinsOnce: input.values['joinsOnce'] === 'yes' };
		const helper = input.take(helperInput.safeParse(wish));
		if (!helper) return fail(400, { form: 'helper' as const, ...input.refusal });
		const path = await addHelper(locals.context, helper);
		return { form: 'link' as const, name: helper.name, link: whole(locals, url, path) };
	},
	renew: async ({ request, locals, url }) => {
		const { id = '', name = '', once } = formValues(await request.formData());
		const path = await found(renewJoinLink(locals.context, id, once === 'yes'));
		return { form: 'link' as const, name, link: whole(locals, url, path) };
	},
	remove: async ({ request, locals }) => {
		await removeHelper(locals.context, String((await request.formData()).get('id')));
		redirect(303, '/people?done=removed');
	},
	guest: async ({ request, locals, url }) => {
		const input = new FormInput(formValues(await request.formData()));
		const { lake = '', seesPlaces } = input.values;
		const wish = { name: input.text('name') ?? '', lake, seesPlaces: seesPlaces === 'yes' };
		const guest = input.take(guestLinkInput.safeParse(wish));
		if (!guest) return fail(400, { form: 'guest' as const, ...input.refusal });
		const path = await found(addGuestLink(locals.context, guest));
		return { form: 'link' as const, name: guest.name, link: whole(locals, url, path) };
	},
	revoke: async ({ request, locals }) => {
		await revokeGuestLink(locals.context, String((await request.formData()).get('id')));
		redirect(303, '/people?done=revoked');
	},
	everybody: async ({ locals }) => {
		await closeAllSessions(locals.context);
		redirect(303, '/people?done=everybody');
	}
};

function whole({ context }: App.Locals, url: URL, path: string): string {
	return `${context.address ?? url.origin}${path}`;
}
