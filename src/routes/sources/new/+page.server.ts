import { error, fail, redirect } from '@sveltejs/kit';
import { forgetHeldKey } from '#lib/server/services/sources/held-keys.ts';
import { readyMadeSources } from '#lib/server/services/sources/ready-made.ts';
import { createSource } from '#lib/server/services/sources/sources.ts';
import type { WeatherSource } from '#lib/server/services/sources/mapping.ts';
import { FormInput, formValues } from '#lib/ui/forms/form-input.ts';
import { found } from '../../lakes/[lake]/found.ts';
import { addToLake } from '../set-up/add-to-lake.ts';
import { callValues } from '../set-up/call-values.ts';
import { lakesToAsk } from '../set-up/lakes-to-ask.ts';
import { readCall } from '../set-up/read-call.ts';
import { factValues, readSource } from '../set-up/read-source.ts';
import { takeKey } from '../set-up/take-key.ts';
import { tryIt } from '../set-up/try-it.ts';
import { unitsOfRoles } from '../set-up/units-of-roles.ts';
import { readyMadeOf } from '../source-card.ts';
import type { Actions, PageServerLoad } from './$types';

/** What it begins with, and which of its addresses is tried, stand in the address of the page. */
export const load: PageServerLoad = async ({ locals: { context }, url }) => {
	const { draft, at } = await draftOf(url);
	const call = draft?.calls[at];
	const lake = url.searchParams.get('lake');
	return {
		start: {
			...factValues(draft),
			...(call ? callValues(call) : {}),
			...(lake ? { lake } : {})
		},
		readyMade: draft ? readyMadeOf(draft, context.weather.contact) : null,
		addresses:
			draft?.calls.map(({ part }, index) => ({ part, index, isTried: index === at })) ?? [],
		lakes: await lakesToAsk(context),
		unitsOf: unitsOfRoles()
	};
};

export const actions: Actions = {
	try: async ({ request, locals, url }) => {
		const { draft, at } = await draftOf(url);
		const values = formValues(await request.formData());
		const of = { base: draft?.calls[at] ?? null, sourceId: null };
		const outcome = await found(tryIt(locals.context, values, of));
		return 'refusal' in outcome ? fail(400, outcome.refusal) : { ...outcome, issues: [] };
	},
	store: async ({ request, locals: { context }, url }) => {
		const { draft, at } = await draftOf(url);
		const { key: typed, ...values } = formValues(await request.formData());
		const input = new FormInput(values);
		const call = readCall(input, draft?.calls[at] ?? null);
		const key = takeKey(context, typed, values, call);
		if (call.mapping === null)
			input.refuse('map.air.path', 'Try it first, so that its temperatures are found.');
		const calls = [
			...(draft?.calls ?? []).slice(0, at),
			call,
			...(draft?.calls ?? []).slice(at + 1)
		];
		const source = readSource(input, draft, calls);
		if (!source) return fail(400, input.refusal);
		if (source.needsKey && !key) {
			input.refuse('key', 'The address has a {key}. Type the key that goes there.');
			return fail(400, input.refusal);
		}
		const { id } = await createSource(context, { source, key });
		forgetHeldKey(context, values['held'] ?? '');
		const lake = (await lakesToAsk(context)).find((each) => each.id === values['lake']);
		if (!lake || lake.hasOwnToday || input.text('use') !== 'yes')
			redirect(303, `/sources?stored=${id}`);
		await found(addToLake(context, lake.id, { source: id, station: input.text('station') }));
		redirect(303, `/lakes/${lake.id}/weather?stored=${id}`);
	}
};

async function draftOf(url: URL): Promise<{ draft: WeatherSource | null; at: number }> {
	const from = url.searchParams.get('from');
	if (from === null) return { draft: null, at: 0 };
	const draft = (await readyMadeSources()).find(({ id }) => id === from);
	if (!draft) error(404, `There is no ready-made source “${from}”.`);
	const asked = Number(url.searchParams.get('address') ?? 0);
	return { draft, at: draft.calls[asked] ? asked : 0 };
}
