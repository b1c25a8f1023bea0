import { redirect } from '@sveltejs/kit';
import { restoreLake } from '#lib/server/services/lakes.ts';
import { found } from '../../found.ts';
import type { Actions, PageServerLoad } from './$types';

export const load: PageServerLoad = ({ url }) => ({
	name: url.searchParams.get('name') ?? 'The lake'
});

export const actions: Actions = {
	default: async ({ params, locals }) => {
		await found(restoreLake(locals.context, params.lake));
		redirect(303, `/lakes/${params.lake}`);
	}
};
