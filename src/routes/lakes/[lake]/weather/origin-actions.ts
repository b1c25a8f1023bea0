import { error, redirect, type RequestEvent } from '@sveltejs/kit';
import type { Context } from '#lib/server/context.ts';
import { oneAtATime } from '#lib/server/services/one-at-a-time.ts';
import {
	NoSource,
	startEarlierWinters,
	startRefresh
} from '#lib/server/services/refresh/refresh-lake.ts';
import {
	CSV,
	getLakeOrder,
	lakeOrderInput,
	setLakeOrder,
	type LakeOrigin
} from '#lib/server/services/sources/lake-order.ts';
import { found } from '../found.ts';

type Event = RequestEvent<{ lake: string }>;
type Use = ReturnType<typeof asUse>;

/** What can be done with the origins of a lake's weather. Each answers with the page anew. */
export const originActions = {
	refresh: async ({ params, locals }: Event) => {
		await refresh(locals.context, params.lake);
		redirect(303, '?done=asked#origins');
	},
	earlierWinters: async ({ params, locals }: Event) => {
		await asked(() => startEarlierWinters(locals.context, params.lake));
		redirect(303, '?done=earlier#origins');
	},
	/** Takes a source into use, trusted least or where it was before. */
	use: async (event: Event) => {
		const form = await event.request.formData();
		const source = String(form.get('source'));
		const typed = form.get('station');
		const station = typeof typed === 'string' && typed.trim() !== '' ? typed : null;
		const correctsElevation = form.get('corrects') !== 'no';
		await change(event, (order) => {
			const at = form.has('at') ? Number(form.get('at')) : order.length;
			return order.toSpliced(at, 0, { source, station, correctsElevation });
		});
		await refresh(event.locals.context, event.params.lake);
		redirect(303, `?stored=${encodeURIComponent(source)}#origins`);
	},
	unuse: async (event: Event) => {
		const source = String((await event.request.formData()).get('source'));
		// What brings it back as it was: another station's weather would be fetched anew.
		const removed = new URLSearchParams({ removed: source });
		await change(event, (order) => {
			const at = order.findIndex((use) => use.source === source);
			removed.set('at', String(Math.max(0, at)));
			removed.set('station', order[at]?.station ?? '');
			removed.set('corrects', order[at]?.correctsElevation === false ? 'no' : 'yes');
			return order.filter((use) => use.source !== source);
		});
		redirect(303, `?${removed}#origins`);
	},
	move: async (event: Event) => {
		const form = await event.request.formData();
		const source = String(form.get('source'));
		const by = form.get('way') === 'up' ? -1 : 1;
		await change(event, (order) => {
			const from = order.findIndex((use) => use.source === source);
			const use = order[from];
			return use ? order.toSpliced(from, 1).toSpliced(Math.max(0, from + by), 0, use) : order;
		});
		redirect(303, '?done=moved#origins');
	},
	correct: async (event: Event) => {
		const form = await event.request.formData();
		const correctsElevation = form.get('on') === 'yes';
		const source = String(form.get('source'));
		await change(event, (order) =>
			order.map((use) => (use.source === source ? { ...use, correctsElevation } : use))
		);
		redirect(303, `?done=${correctsElevation ? 'corrected' : 'uncorrected'}#origins`);
	}
};

async function change({ params, locals }: Event, make: (order: Use[]) => Use[]): Promise<void> {
	await oneAtATime(locals.context, params.lake, async () => {
		const before = await found(getLakeOrder(locals.context, params.lake));
		const order = make(before.map(asUse));
		const input = lakeOrderInput.safeParse({ order });
		// No form of ours sends such: it was left open in a second window, or made by somebody else.
		if (!input.success)
			error(400, `The order of trust ${input.error.issues[0]?.message}. Load the page again.`);
		await found(setLakeOrder(locals.context, params.lake, input.data));
	});
}

/** An origin as the order of trust takes it. */
export function asUse(origin: LakeOrigin): {
	source: string;
	correctsElevation?: boolean;
	station?: string | null;
} {
	if (origin.kind === 'csv') return { source: CSV };
	const { source, correctsElevation, station } = origin;
	return { source, correctsElevation, station };
}

function refresh(context: Context, lakeId: string): Promise<void> {
	return asked(() => startRefresh(context, lakeId));
}

async function asked(start: () => Promise<unknown>): Promise<void> {
	try {
		await found(start());
	} catch (cause) {
		// A source that is switched off has nothing to ask.
		if (!(cause instanceof NoSource)) throw cause;
	}
}
