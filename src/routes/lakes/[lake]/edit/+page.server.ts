import { fail, redirect } from '@sveltejs/kit';
import { deleteLake, getLake, lakeChange, updateLake } from '#lib/server/services/lakes.ts';
import { FormInput, formValues } from '#lib/ui/forms/form-input.ts';
import { readLake } from '#lib/ui/forms/lake-input.ts';
import { found } from '../found.ts';
import type { Actions, PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ params, locals, url }) => ({
	lake: await found(getLake(locals.context, params.lake)),
	isStored: url.searchParams.has('stored')
});

export const actions: Actions = {
	store: async ({ params, request, locals }) => {
		const stored = await found(getLake(locals.context, params.lake));
		const input = new FormInput(formValues(await request.formData()));
		const change = input.take(lakeChange.safeParse(readLake(input, stored)));
		if (!change) return fail(400, { form: 'lake' as const, ...input.refusal });
		await updateLake(locals.context, stored.id, change);
		redirect(303, '?stored');
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
