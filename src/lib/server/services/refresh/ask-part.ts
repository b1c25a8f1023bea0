import type { Context } from '../../context.ts';
import { storeAsAsked } from '../../storage/as-asked.ts';
import { readFetchStates } from '../../storage/fetch-states.ts';
import { refetchable } from '../../storage/refetchable.ts';
import { countCalls, readSourceState } from '../../storage/source-states.ts';
import type { Ask, SourceAnswer, SourcePart, Span } from '../../weather/source/contract.ts';
import { callsFor, refusalFor, type Refusal } from './allowance.ts';
import { logAsked, logNotAsked } from './ask-log.ts';
import type { Asked, Asking, Taking } from './asking.ts';
import { noteOutcome } from './outcome.ts';
import { observedBeside } from './same-issue.ts';

/** Asks a source once, where its limits allow it, stores what comes and writes the log. */
export async function askPart(
	ctx: Context,
	asking: Asking,
	part: SourcePart,
	span: Span,
	taking: Taking
): Promise<Asked> {
	const came = await askOnce(ctx, asking, part, span, async (ask) => {
		const { fetchWeather, settings } = ctx.weather;
		return [await fetchWeather(asking.source, ask, settings)];
	});
	if (!('answers' in came)) return came;
	const [answer] = came.answers;
	if (!answer) return { kind: 'stopped' };
	return take(ctx, asking, part, { answer, duration_ms: came.duration_ms }, taking);
}

/** The same for a source that answers both parts together: one call, of which each takes its own. */
export async function askTogether(
	ctx: Context,
	asking: Asking,
	span: Span,
	taking: Record<SourcePart, Taking>
): Promise<Record<SourcePart, Asked>> {
	const states = await readFetchStates(ctx.db, asking.use.id);
	const isAlike = states.history?.validators === states.forecast?.validators;
	const came = await askOnce(ctx, asking, 'history', span, async (ask) => {
		const { fetchBoth, settings } = ctx.weather;
		// What one part could not use must come again in full.
		const conditional = isAlike ? ask : { ...ask, validators: null };
		const { history, forecast } = await fetchBoth(asking.source, conditional, settings);
		return [history, forecast];
	});
	if (!('answers' in came)) return { history: came, forecast: came };
	const [past, forecast] = came.answers;
	if (!past || !forecast) return { history: { kind: 'stopped' }, forecast: { kind: 'stopped' } };
	const { duration_ms } = came;
	const { latitude, timeZone } = asking.lake;
	const at = { now: ctx.now(), latitude, timeZone };
	const history = await observedBeside(ctx.db, asking.use.id, past, forecast, at);
	// The day that runs is told by what was measured of it, and by the forecast for the rest.
	return {
		history: await take(ctx, asking, 'history', { answer: history, duration_ms }, taking.history),
		forecast: await take(
			ctx,
			asking,
			'forecast',
			{ answer: forecast, duration_ms },
			taking.forecast
		)
	};
}

type Came = { answers: SourceAnswer[]; duration_ms: number } | Exclude<Asked, { kind: 'answered' }>;

async function askOnce(
	ctx: Context,
	asking: Asking,
	part: SourcePart,
	span: Span,
	fetch: (ask: Ask) => Promise<SourceAnswer[]>
): Promise<Came> {
	const { source, signal } = asking;
	const calls = callsFor(source, part);
	const refusal = await refused(ctx, asking, calls);
	if (refusal) {
		await logNotAsked(ctx, asking, part, refusal);
		return { kind: 'refused', refusal };
	}
	await asking.pace.turn(source, calls, signal);
	if (signal.aborted) return { kind: 'stopped' };
	const started_ms = performance.now();
	const answers = await fetch(await askFor(ctx, asking, part, span));
	const duration_ms = Math.round(performance.now() - started_ms);
	const on = ctx.now().toISOString().slice(0, 10);
	const made = answers.reduce((sum, answer) => sum + answer.calls, 0);
	await refetchable(ctx.db, (db) => countCalls(db, asking.use.source_id, on, made));
	return signal.aborted ? { kind: 'stopped' } : { answers, duration_ms };
}

async function refused(ctx: Context, asking: Asking, calls: number): Promise<Refusal | null> {
	const { source, isOnDemand, reserve, use } = asking;
	const state = await readSourceState(ctx.db, use.source_id);
	return refusalFor(source, state, calls, { now: ctx.now(), isOnDemand, reserve });
}

async function take(
	ctx: Context,
	asking: Asking,
	part: SourcePart,
	{ answer, duration_ms }: { answer: SourceAnswer; duration_ms: number },
	{ store, moreFaults }: Taking
): Promise<Asked> {
	const noted = await refetchable(ctx.db, (db) =>
		storeAsAsked(db, asking.asked, (tx) => noteOutcome({ ...ctx, db: tx }, asking, part, answer))
	);
	if (noted === 'outdated') return { kind: 'outdated' };
	const stored = answer.outcome === 'ok' ? await store(answer) : 0;
	if (stored === 'outdated') return { kind: 'outdated' };
	const isAnswered = answer.outcome !== 'failed';
	const faults = [...answer.faults, ...(isAnswered ? await moreFaults() : [])];
	await logAsked(ctx, asking, part, { ...answer, faults, stored, duration_ms });
	return { kind: 'answered', answer, faults };
}

async function askFor(
	ctx: Context,
	{ lake, use, key, signal }: Asking,
	part: SourcePart,
	span: Span
): Promise<Ask> {
	const state = (await readFetchStates(ctx.db, use.id))[part];
	return {
		latitude: lake.latitude,
		longitude: lake.longitude,
		elevation_m: lake.elevation_m,
		timeZone: lake.timeZone,
		...span,
		part,
		key,
		contact: ctx.weather.contact,
		station: use.station,
		validators: state?.validators ? (JSON.parse(state.validators) as Ask['validators']) : null,
		now: ctx.now(),
		signal
	};
}
