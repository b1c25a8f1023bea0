import { fail, redirect } from '@sveltejs/kit';
import { createLake, newLake } from '#lib/server/services/lakes.ts';
import { FormInput, formValues } from '#lib/ui/forms/form-input.ts';
import { readLake } from '#lib/ui/forms/lake-input.ts';
import type { Actions } from './$types';

export const actions: Actions = {
	default: async ({ request, locals }) => {
		const input = new FormInput(formValues(await request.formData()));
		const lake = input.take(newLake.safeParse(readLake(input)));
		if (!lake) return fail(400, input.refusal);
		const { id } = await createLake(locals.context, lake);
		redirect(303, `/lakes/${id}/winter?made`);
	}
};
