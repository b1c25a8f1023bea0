import { redirect } from '@sveltejs/kit';
import { listDeletedLakes } from '#lib/server/services/deleted-lakes.ts';
import { lakeView } from '#lib/server/services/lake-view.ts';
import { listLakes, restoreLake } from '#lib/server/services/lakes.ts';
import { parseUnits, UNITS_COOKIE } from '#lib/ui/units-setting.ts';
import { wordsIn } from '#lib/ui/words.ts';
import { lakeCard } from './lake-card.ts';
import { found } from './lakes/[lake]/found.ts';
import type { Actions, PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ locals, cookies }) => {
	const lakes = await listLakes(locals.context);
	const words = wordsIn(parseUnits(cookies.get(UNITS_COOKIE)));
	// To the winter's end, though home shows today alone: the lakes' pages ask the same and find it kept.
	const options = { words, toWinterEnd: true };
	const views = await Promise.all(lakes.map(({ id }) => lakeView(locals.context, id, options)));
	const deleted = await listDeletedLakes(locals.context);
	return { cards: views.map(lakeCard), deleted: deleted.map(({ id, name }) => ({ id, name })) };
};

export const actions: Actions = {
	restore: async ({ request, locals }) => {
		const id = (await request.formData()).get('id');
		const { id: lake } = await found(restoreLake(locals.context, String(id)));
		redirect(303, `/lakes/${lake}`);
	}
};
