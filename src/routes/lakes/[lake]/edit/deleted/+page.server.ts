import { redirect } from '@sveltejs/kit';
import { listDeletedLakes } from '#lib/server/services/deleted-lakes.ts';
import { restoreLake } from '#lib/server/services/lakes.ts';
import { found } from '../../found.ts';
import type { Actions, PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ params, locals }) => {
	const deleted = await listDeletedLakes(locals.context);
	const lake = deleted.find(({ id }) => id === params.lake);
	if (!lake) redirect(303, `/lakes/${params.lake}`);
	return { name: lake.name };
};

export const actions: Actions = {
	default: async ({ params, locals }) => {
		await found(restoreLake(locals.context, params.lake));
		redirect(303, `/lakes/${params.lake}`);
	}
};
