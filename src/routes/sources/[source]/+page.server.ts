import { fail, redirect } from '@sveltejs/kit';
import { oneAtATime, sourceLine } from '#lib/server/services/one-at-a-time.ts';
import { sourceChange } from '#lib/server/services/sources/input.ts';
import { sourceOverview } from '#lib/server/services/sources/overview.ts';
import { getSource, updateSource } from '#lib/server/services/sources/sources.ts';
import { FormInput, formValues } from '#lib/ui/forms/form-input.ts';
import { mergeShown } from '#lib/ui/forms/merge-shown.ts';
import { found } from '../../lakes/[lake]/found.ts';
import { factValues, readSource } from '../set-up/read-source.ts';
import { cardOf } from '../source-card.ts';
import { addressesOf } from './addresses-of.ts';
import type { Actions, PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ params, locals: { context }, url }) => {
	const overview = await found(sourceOverview(context, params.source));
	const { source, hasKey } = overview;
	return {
		card: cardOf(overview, context.now()),
		facts: factValues(source),
		addresses: source ? addressesOf(source) : [],
		hasKey,
		needsKey: source?.needsKey ?? false,
		isAsking: overview.isAsking,
		stored: url.searchParams.get('stored')
	};
};

export const actions: Actions = {
	facts: async ({ params, request, locals }) => {
		const { context } = locals;
		const input = new FormInput(formValues(await request.formData()));
		return oneAtATime(context, sourceLine(params.source), async () => {
			const { source: before } = await found(getSource(context, params.source));
			if (before) mergeShown(input, () => factValues(before));
			const source = before && readSource(input, before, before.calls);
			if (!source) return fail(400, { form: 'facts' as const, ...input.refusal });
			await found(updateSource(context, params.source, { source }));
			redirect(303, '?stored=facts');
		});
	},
	key: async ({ params, request, locals }) => {
		const input = new FormInput(formValues(await request.formData()));
		const typed = input.required('key', 'Type the key that the service gave you.');
		const key = input.take(sourceChange.safeParse({ key: typed }))?.key;
		// What was refused stays in nobody's page: a key least of all.
		if (!key) return fail(400, { form: 'key' as const, values: {}, issues: input.issues });
		await found(updateSource(locals.context, params.source, { key }));
		redirect(303, '?stored=key');
	},
	forgetKey: async ({ params, locals }) => {
		await found(updateSource(locals.context, params.source, { key: null }));
		redirect(303, '?stored=forgotten');
	},
	switch: async ({ params, request, locals }) => {
		const isOn = (await request.formData()).get('on') === 'yes';
		await found(updateSource(locals.context, params.source, { isOn }));
		redirect(303, `?stored=${isOn ? 'on' : 'off'}`);
	},
	removeAddress: async ({ params, request, locals }) => {
		const { context } = locals;
		const form = await request.formData();
		return oneAtATime(context, sourceLine(params.source), async () => {
			const { source } = await found(getSource(context, params.source));
			const at = Number(form.get('at'));
			// Where another has removed one meanwhile, its number is that of the next.
			const was = form.get('was');
			if (was !== null && was !== source?.calls[at]?.address) redirect(303, '?stored=moved');
			const calls = source?.calls.filter((_, index) => index !== at) ?? [];
			if (!source || calls.length === 0) redirect(303, '?stored=last');
			await found(updateSource(context, params.source, { source: { ...source, calls } }));
			redirect(303, '?stored=removed');
		});
	}
};
