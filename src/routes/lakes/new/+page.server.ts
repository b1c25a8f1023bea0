import { fail, redirect } from '@sveltejs/kit';
import { createLake, newLake } from '#lib/server/services/lakes.ts';
import { FormInput, formValues } from '#lib/ui/forms/form-input.ts';
import { readLake } from '#lib/ui/forms/lake-input.ts';
import type { Actions } from './$types';

export const actions: Actions = {
	default: async ({ request, locals }) => {
		const input = new FormInput(formValues(await request.formData()));
		const parsed = newLake.safeParse(readLake(input));
		if (!parsed.success) input.refuseAll(parsed.error.issues);
		if (!parsed.success || input.issues.length > 0) return fail(400, input.refusal);
		const lake = await createLake(locals.context, parsed.data);
		redirect(303, `/lakes/${lake.id}/winter?made`);
	}
};
