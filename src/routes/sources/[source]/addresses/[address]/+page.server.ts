import { error, fail, redirect } from '@sveltejs/kit';
import type { Context } from '#lib/server/context.ts';
import { oneAtATime, sourceLine } from '#lib/server/services/one-at-a-time.ts';
import { sourceOverview } from '#lib/server/services/sources/overview.ts';
import { updateSource } from '#lib/server/services/sources/sources.ts';
import { FormInput, formValues } from '#lib/ui/forms/form-input.ts';
import { found } from '../../../../lakes/[lake]/found.ts';
import { mergeShown } from '#lib/ui/forms/merge-shown.ts';
import { callValues, WHOLE_ADDRESS } from '../../../set-up/call-values.ts';
import { lakesToAsk } from '../../../set-up/lakes-to-ask.ts';
import { readCall } from '../../../set-up/read-call.ts';
import { factValues, readSource } from '../../../set-up/read-source.ts';
import { takeKey } from '../../../set-up/take-key.ts';
import { tryIt } from '../../../set-up/try-it.ts';
import { unitsOfRoles } from '../../../set-up/units-of-roles.ts';
import type { Actions, PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ params, locals: { context } }) => {
	const { source, call, hasKey, lakes } = await addressOf(context, params);
	const choices = await lakesToAsk(context);
	const [used] = lakes;
	return {
		source: { id: source.id, name: source.name },
		isNew: call === null,
		shown: call ? callValues(call) : {},
		start: {
			name: source.name,
			...(call ? callValues(call) : {}),
			...(used ? { lake: used.id } : {})
		},
		hasKey,
		lakes: choices,
		unitsOf: unitsOfRoles()
	};
};

export const actions: Actions = {
	try: async ({ params, request, locals: { context } }) => {
		const { source, call } = await addressOf(context, params);
		const values = { ...formValues(await request.formData()), name: source.name };
		const outcome = await found(tryIt(context, values, { base: call, sourceId: source.id }));
		return 'refusal' in outcome ? fail(400, outcome.refusal) : { ...outcome, issues: [] };
	},
	store: async ({ params, request, locals: { context } }) => {
		const { key: typed, ...values } = formValues(await request.formData());
		const input = new FormInput(values);
		return oneAtATime(context, sourceLine(params.source), async () => {
			const { source, call, at } = await addressOf(context, params);
			mergeShown(input, () => (call ? callValues(call) : {}), { together: [WHOLE_ADDRESS] });
			const read = readCall(input, call);
			const key = takeKey(context, typed, values, read);
			if (read.mapping === null)
				input.refuse('map.air.path', 'Try it first, so that its temperatures are found.');
			const facts = new FormInput(factValues(source));
			const calls = [...source.calls.slice(0, at), read, ...source.calls.slice(at + 1)];
			const changed = input.issues.length === 0 ? readSource(facts, source, calls) : null;
			input.issues.push(...facts.issues);
			if (!changed) return fail(400, input.refusal);
			await found(
				updateSource(context, source.id, { source: changed, ...(key === null ? {} : { key }) })
			);
			redirect(303, `/sources/${source.id}?stored=address`);
		});
	}
};

/** The address that the page is about; `new` is one more. */
async function addressOf(context: Context, params: { source: string; address: string }) {
	const { source, problem, hasKey, lakes } = await found(sourceOverview(context, params.source));
	if (!source) error(409, problem ?? 'This source cannot be read.');
	const at = params.address === 'new' ? source.calls.length : Number(params.address);
	const call = source.calls[at] ?? null;
	if (call === null && params.address !== 'new') {
		error(404, `${source.name} has no such address.`);
	}
	return { source, call, at, hasKey, lakes };
}
