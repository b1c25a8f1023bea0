import { fail, redirect } from '@sveltejs/kit';
import { getLake } from '#lib/server/services/lakes.ts';
import { routeInput } from '#lib/server/services/places/route-input.ts';
import { addRoute } from '#lib/server/services/places/routes.ts';
import { listWeakSpots } from '#lib/server/services/places/weak-spots.ts';
import { FormInput, formValues } from '#lib/ui/forms/form-input.ts';
import { addPointRow, readRoute } from '#lib/ui/forms/route-form.ts';
import { found } from '../../../found.ts';
import { refuseRoute } from '../../refusals.ts';
import type { Actions, PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ params, locals }) => ({
	lake: await found(getLake(locals.context, params.lake)),
	spots: await found(listWeakSpots(locals.context, params.lake))
});

export const actions: Actions = {
	add: async ({ params, request, locals }) => {
		const input = new FormInput(formValues(await request.formData()));
		const route = input.take(routeInput.safeParse(readRoute(input)));
		if (!route) return fail(400, input.refusal);
		const stored = await found(addRoute(locals.context, params.lake, route));
		if (stored.status !== 'stored') return refuseRoute(input, stored);
		redirect(303, `/lakes/${params.lake}/weak-spots/routes/${stored.route.id}?stored=1`);
	},
	point: async ({ request }) => addPointRow(formValues(await request.formData()))
};
