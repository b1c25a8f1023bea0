import { error, fail, redirect } from '@sveltejs/kit';
import { oneAtATime } from '#lib/server/services/one-at-a-time.ts';
import { loadInput } from '#lib/server/services/load-input.ts';
import { getLake } from '#lib/server/services/lakes.ts';
import { listOwnLoads, updateLoad } from '#lib/server/services/own-loads.ts';
import type { Context } from '#lib/server/context.ts';
import { FormInput, formValues } from '#lib/ui/forms/form-input.ts';
import { loadValues, loadWordsOf, readLoad } from '#lib/ui/forms/load-input.ts';
import { mergeShown } from '#lib/ui/forms/merge-shown.ts';
import { found } from '../../found.ts';
import type { Actions, PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ params, locals }) => ({
	lake: await found(getLake(locals.context, params.lake)),
	load: await ownLoad(locals.context, params)
});

export const actions: Actions = {
	default: async ({ params, request, locals }) => {
		const input = new FormInput(formValues(await request.formData()));
		return oneAtATime(locals.context, params.lake, async () => {
			const stored = await ownLoad(locals.context, params);
			mergeShown(input, (units) => loadValues(stored, units), { words: loadWordsOf });
			const own = input.take(loadInput.safeParse(readLoad(input, stored)));
			if (!own) return fail(400, input.refusal);
			await found(updateLoad(locals.context, params.lake, stored.id, own));
			redirect(303, `/lakes/${params.lake}/loads?stored=${stored.id}`);
		});
	}
};

async function ownLoad(context: Context, params: { lake: string; load: string }) {
	const loads = await found(listOwnLoads(context, params.lake));
	const load = loads.find(({ id }) => id === params.load);
	return load ?? error(404, `No load "${params.load}" of lake "${params.lake}".`);
}
