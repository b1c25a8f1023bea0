import { fail, redirect } from '@sveltejs/kit';
import { sourceChange } from '#lib/server/services/sources/input.ts';
import { sourceOverview } from '#lib/server/services/sources/overview.ts';
import { getSource, updateSource } from '#lib/server/services/sources/sources.ts';
import { FormInput, formValues } from '#lib/ui/forms/form-input.ts';
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
		const { source: before } = await found(getSource(locals.context, params.source));
		const input = new FormInput(formValues(await request.formData()));
		const source = before && readSource(input, before, before.calls);
		if (!source) return fail(400, { form: 'facts' as const, ...input.refusal });
		await found(updateSource(locals.context, params.source, { source }));
		redirect(303, '?stored=facts');
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
		const { source } = await found(getSource(locals.context, params.source));
		const at = Number((await request.formData()).get('at'));
		const calls = source?.calls.filter((_, index) => index !== at) ?? [];
		if (!source || calls.length === 0) redirect(303, '?stored=last');
		await found(updateSource(locals.context, params.source, { source: { ...source, calls } }));
		redirect(303, '?stored=removed');
	}
};
