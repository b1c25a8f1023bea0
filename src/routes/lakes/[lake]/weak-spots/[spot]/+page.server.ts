import { fail, redirect } from '@sveltejs/kit';
import { oneAtATime } from '#lib/server/services/one-at-a-time.ts';
import { getLake } from '#lib/server/services/lakes.ts';
import {
	getWeakSpot,
	updateWeakSpot,
	weakSpotInput
} from '#lib/server/services/places/weak-spots.ts';
import { FormInput, formValues } from '#lib/ui/forms/form-input.ts';
import { mergeShown } from '#lib/ui/forms/merge-shown.ts';
import { ONE_POSITION } from '#lib/ui/forms/position-input.ts';
import { readSpot, spotValues, spotWords } from '#lib/ui/forms/spot-input.ts';
import { found } from '../../found.ts';
import { todayAt } from '../../today-at.ts';
import { refuseSpot } from '../refusals.ts';
import type { Actions, PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ params, locals }) => ({
	lake: await found(getLake(locals.context, params.lake)),
	today: await todayAt(locals.context, params.lake),
	spot: await found(getWeakSpot(locals.context, params.lake, params.spot))
});

export const actions: Actions = {
	default: async ({ params, request, locals }) => {
		const input = new FormInput(formValues(await request.formData()));
		return oneAtATime(locals.context, params.lake, async () => {
			const before = await found(getWeakSpot(locals.context, params.lake, params.spot));
			mergeShown(input, () => spotValues(before), { together: [ONE_POSITION], words: spotWords });
			const today = await todayAt(locals.context, params.lake);
			const spot = input.take(weakSpotInput.safeParse(readSpot(input, today, before)));
			if (!spot) return fail(400, input.refusal);
			const stored = await found(updateWeakSpot(locals.context, params.lake, before.id, spot));
			if (stored.status !== 'stored') return refuseSpot(input, stored);
			redirect(303, `/lakes/${params.lake}/weak-spots?stored=${before.id}`);
		});
	}
};
