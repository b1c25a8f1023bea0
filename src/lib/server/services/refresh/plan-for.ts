import { winterOf, type IsoDate } from '#lib/model/calendar.ts';
import type { Context } from '../../context.ts';
import { readFetchStates, type FetchState } from '../../storage/fetch-states.ts';
import { findLakeSourceRow } from '../../storage/lake-sources.ts';
import { SLACK_MS } from '../../storage/set-right.ts';
import { readFirstFreezeUp } from '../../storage/winters.ts';
import { localDay } from '../local-day.ts';
import { lastObservedOf } from '../sources/last-observed.ts';
import { clock, type Refusal } from './allowance.ts';
import type { Asking } from './asking.ts';
import { planRefresh, type Plan } from './plan.ts';

/** What to ask now: without the parts whose last answer still holds, which `tooSoon` says. */
export async function planFor(
	ctx: Context,
	asking: Asking
): Promise<{ plan: Plan; tooSoon: Refusal | null }> {
	const states = await readFetchStates(ctx.db, asking.use.id);
	const plan = planRefresh(asking.source, await broughtBy(ctx, asking, states.history));
	const history = holdsUntil(ctx.now(), asking, states.history);
	const forecast = holdsUntil(ctx.now(), asking, states.forecast);
	const until = [
		...(history && plan.newSpans > 0 ? [history] : []),
		...(forecast && plan.forecast ? [forecast] : [])
	];
	const earliest = until.toSorted((a, b) => a.getTime() - b.getTime())[0];
	return {
		plan: {
			...plan,
			history: history ? plan.history.slice(plan.newSpans) : plan.history,
			newSpans: history ? 0 : plan.newSpans,
			forecast: forecast ? null : plan.forecast
		},
		tooSoon: earliest ? tooSoon(asking, earliest) : null
	};
}

function tooSoon({ source }: Asking, until: Date): Refusal {
	const text = `What ${source.name} answered last holds until ${clock(until)}; it is asked again then.`;
	return { kind: 'holds', until, text };
}

/**
 * Until when the last answer is not to be asked for again; `null` when it may be, as after a change of
 * the source, which makes its uses due at once.
 */
function holdsUntil(
	now: Date,
	{ source, use }: Asking,
	state: FetchState | undefined
): Date | null {
	if (!state?.last_success_at || state.failures > 0 || use.next_at === null) return null;
	// By a clock that was ahead: nobody knows how long it holds.
	if (Date.parse(state.last_success_at) > now.getTime() + SLACK_MS) return null;
	const shortest_ms = source.limits.minInterval_min * 60_000;
	const until_ms = Math.max(
		Date.parse(state.last_success_at) + shortest_ms,
		state.fresh_until_at ? Date.parse(state.fresh_until_at) : 0
	);
	return until_ms > now.getTime() ? new Date(until_ms) : null;
}

async function broughtBy(ctx: Context, { lake, use }: Asking, history: FetchState | undefined) {
	const on = (at: Date): IsoDate => localDay(at, lake.timeZone);
	const today = on(ctx.now());
	const last = (await lastObservedOf(ctx, lake.timeZone, [use.id])).get(use.id);
	const asked = history?.last_success_at;
	return {
		today,
		freezeUpOn: await readFirstFreezeUp(ctx.db, lake.id, winterOf(today)),
		lastOn: last ? on(new Date(last.getTime() - 1)) : null,
		askedOn: asked ? on(new Date(asked)) : null,
		askedFrom: (await findLakeSourceRow(ctx.db, use.id))?.asked_from ?? null
	};
}
