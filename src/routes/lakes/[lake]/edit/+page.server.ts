import { fail, redirect } from '@sveltejs/kit';
import { oneAtATime } from '#lib/server/services/one-at-a-time.ts';
import { deleteLake, getLake, lakeChange, updateLake } from '#lib/server/services/lakes.ts';
import { FormInput, formValues } from '#lib/ui/forms/form-input.ts';
import { lakeValues, readLake } from '#lib/ui/forms/lake-input.ts';
import { mergeShown } from '#lib/ui/forms/merge-shown.ts';
import { ONE_POSITION } from '#lib/ui/forms/position-input.ts';
import { found } from '../found.ts';
import type { Actions, PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ params, locals, url }) => ({
	lake: await found(getLake(locals.context, params.lake)),
	isStored: url.searchParams.has('stored')
});

export const actions: Actions = {
	store: async ({ params, request, locals }) => {
		const input = new FormInput(formValues(await request.formData()));
		return oneAtATime(locals.context, params.lake, async () => {
			const stored = await found(getLake(locals.context, params.lake));
			mergeShown(input, (units) => lakeValues(stored, units), { together: [ONE_POSITION] });
			const change = input.take(lakeChange.safeParse(readLake(input, stored)));
			if (!change) return fail(400, { form: 'lake' as const, ...input.refusal });
			await updateLake(locals.context, stored.id, change);
			redirect(303, '?stored');
		});
	},
	delete: async ({ params, request, locals }) => {
		const { name } = await found(getLake(locals.context, params.lake));
		const input = new FormInput(formValues(await request.formData()));
		if (input.text('sure') !== 'yes') {
			input.refuse(
				'sure',
				`Tick the box to delete ${name} with its weather, winters and readings.`
			);
			return fail(400, { form: 'delete' as const, ...input.refusal });
		}
		await deleteLake(locals.context, params.lake);
		redirect(303, `/lakes/${params.lake}/edit/deleted`);
	}
};
