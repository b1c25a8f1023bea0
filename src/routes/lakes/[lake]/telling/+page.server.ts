import { fail, redirect } from '@sveltejs/kit';
import { oneAtATime } from '#lib/server/services/one-at-a-time.ts';
import { getLake } from '#lib/server/services/lakes.ts';
import { makeFeed, revokeFeed } from '#lib/server/services/telling/feeds.ts';
import { toldMessages } from '#lib/server/services/telling/messages.ts';
import {
	getTelling,
	tellable,
	tellingChangeFor,
	updateTellingOf
} from '#lib/server/services/telling/settings.ts';
import {
	changeWebhook,
	removeWebhook,
	resumeWebhook,
	setWebhook,
	testWebhook,
	USUAL_KINDS,
	webhookChange,
	webhookInputFor
} from '#lib/server/services/telling/webhook/webhook.ts';
import { FormInput, formValues } from '#lib/ui/forms/form-input.ts';
import { mergeShown } from '#lib/ui/forms/merge-shown.ts';
import { parseUnits, UNITS_COOKIE } from '#lib/ui/units-setting.ts';
import { found } from '../found.ts';
import { feedKindOf, readKinds, readWebhook, readWhat } from './read-telling.ts';
import { kindValues, whatValues } from './what-values.ts';
import type { Actions, PageServerLoad } from './$types';

const SHOWN_MESSAGES = 20;

const named = ({ id, name }: { id: string; name: string }) => ({ id, name });

export const load: PageServerLoad = async ({ params, locals, url }) => {
	const ctx = locals.context;
	const lake = await found(getLake(ctx, params.lake));
	const { sites, loads } = await tellable(ctx, lake.id);
	return {
		lake: {
			id: lake.id,
			name: lake.name,
			isInvented: lake.isInvented,
			timeZone: lake.timeZone
		},
		sites: sites.map(named),
		loads: loads.map(named),
		telling: await getTelling(ctx, lake.id),
		messages: await toldMessages(ctx, lake.id, SHOWN_MESSAGES),
		usualKinds: [...USUAL_KINDS],
		hasAddress: ctx.address !== null,
		now: ctx.now(),
		done: url.searchParams.get('done')
	};
};

export const actions: Actions = {
	what: async ({ params, request, locals }) => {
		const input = new FormInput(formValues(await request.formData()));
		const { context } = locals;
		return oneAtATime(context, params.lake, async () => {
			const lake = await found(tellable(context, params.lake));
			const stands = await getTelling(context, params.lake);
			mergeShown(input, () => whatValues(stands));
			const change = input.take(tellingChangeFor(lake).safeParse(readWhat(input)));
			if (!change) return fail(400, { form: 'what' as const, ...input.refusal });
			await found(updateTellingOf(context, params.lake, change));
			redirect(303, '?done=what');
		});
	},
	/** No redirect: its answer is the one time that the address is shown. */
	make: async ({ params, request, locals, url, cookies }) => {
		const kind = feedKindOf(await request.formData());
		const units = parseUnits(cookies.get(UNITS_COOKIE));
		const path = await found(makeFeed(locals.context, params.lake, kind, units));
		return { form: kind, address: `${locals.context.address ?? url.origin}${path}` };
	},
	revoke: async ({ params, request, locals }) => {
		const kind = feedKindOf(await request.formData());
		await found(revokeFeed(locals.context, params.lake, kind));
		redirect(303, `?done=${kind}`);
	},
	webhook: async ({ params, request, locals, cookies }) => {
		const input = new FormInput(formValues(await request.formData()));
		const webhook = input.take(webhookInputFor(locals.context).safeParse(readWebhook(input)));
		if (!webhook) return fail(400, { form: 'webhook' as const, ...input.refusal });
		const units = parseUnits(cookies.get(UNITS_COOKIE));
		const { key } = await found(setWebhook(locals.context, params.lake, webhook, units));
		return { form: 'webhook' as const, key };
	},
	kinds: async ({ params, request, locals }) => {
		const input = new FormInput(formValues(await request.formData()));
		const { context } = locals;
		return oneAtATime(context, params.lake, async () => {
			const { webhook } = await found(getTelling(context, params.lake));
			mergeShown(input, () => kindValues(webhook?.kinds ?? []));
			const change = input.take(webhookChange.safeParse({ kinds: readKinds(input) }));
			if (!change) return fail(400, { form: 'kinds' as const, ...input.refusal });
			await found(changeWebhook(context, params.lake, change));
			redirect(303, '?done=kinds');
		});
	},
	test: async ({ params, locals }) => {
		const posted = await found(testWebhook(locals.context, params.lake));
		return { form: 'test' as const, posted };
	},
	resume: async ({ params, locals }) => {
		await found(resumeWebhook(locals.context, params.lake));
		redirect(303, '?done=resumed');
	},
	remove: async ({ params, locals }) => {
		await found(removeWebhook(locals.context, params.lake));
		redirect(303, '?done=removed');
	}
};
