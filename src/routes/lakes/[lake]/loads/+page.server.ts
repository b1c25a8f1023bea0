import { fail, redirect } from '@sveltejs/kit';
import { loadInput } from '#lib/server/services/load-input.ts';
import { oneAtATime } from '#lib/server/services/one-at-a-time.ts';
import { getLake, lakeChange, updateLake } from '#lib/server/services/lakes.ts';
import { addLoad, deleteLoad, restoreLoad } from '#lib/server/services/own-loads.ts';
import { listedLoads, setShownLoads, shownInput } from '#lib/server/services/shown-loads.ts';
import { FormInput, formValues } from '#lib/ui/forms/form-input.ts';
import { mergeShown } from '#lib/ui/forms/merge-shown.ts';
import { readLoad } from '#lib/ui/forms/load-input.ts';
import { found } from '../found.ts';
import { SHOWN_BOX, shownValues } from './shown-values.ts';
import type { Actions, PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ params, locals, url }) => ({
	lake: await found(getLake(locals.context, params.lake)),
	loads: await found(listedLoads(locals.context, params.lake)),
	stored: url.searchParams.get('stored'),
	deleted: url.searchParams.get('deleted')
});

export const actions: Actions = {
	chartSet: async ({ params, request, locals }) => {
		const input = new FormInput(formValues(await request.formData()));
		const parsed = lakeChange.safeParse({ chartSet: input.text('chartSet') });
		if (!parsed.success) {
			input.refuse('chartSet', 'Choose one of the two sets.');
			return fail(400, { form: 'chartSet' as const, ...input.refusal });
		}
		await found(updateLake(locals.context, params.lake, parsed.data));
		redirect(303, '?stored=set');
	},
	show: async ({ params, request, locals }) => {
		const form = await request.formData();
		const boxes = shownValues(form.getAll('shown').map(String));
		const input = new FormInput({ ...formValues(form), ...boxes });
		return oneAtATime(locals.context, params.lake, async () => {
			const loads = await found(listedLoads(locals.context, params.lake));
			const stands = loads.filter(({ isShown }) => isShown).map(({ id }) => id);
			mergeShown(input, () => shownValues(stands));
			const ticked = Object.keys(input.values).filter((name) => name.startsWith(SHOWN_BOX));
			const shown = ticked.map((name) => name.slice(SHOWN_BOX.length));
			const parsed = shownInput.safeParse({ shown });
			if (!parsed.success) {
				input.refuse('shown', 'Tick one load at least.');
				return fail(400, { form: 'shown' as const, ...input.refusal });
			}
			await found(setShownLoads(locals.context, params.lake, parsed.data));
			redirect(303, '?stored=shown');
		});
	},
	add: async ({ params, request, locals }) => {
		const input = new FormInput(formValues(await request.formData()));
		const own = input.take(loadInput.safeParse(readLoad(input)));
		if (!own) return fail(400, { form: 'load' as const, ...input.refusal });
		const { id } = await found(addLoad(locals.context, params.lake, own));
		redirect(303, `?stored=${id}`);
	},
	delete: async ({ params, request, locals }) => {
		const id = String((await request.formData()).get('id'));
		await found(deleteLoad(locals.context, params.lake, id));
		redirect(303, `?deleted=${id}`);
	},
	restore: async ({ params, request, locals }) => {
		const id = String((await request.formData()).get('id'));
		await found(restoreLoad(locals.context, params.lake, id));
		redirect(303, `?stored=${id}`);
	}
};
