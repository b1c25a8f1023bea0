import type { Context } from '../../context.ts';
import { storeAsAsked, type AskedOf } from '../../storage/as-asked.ts';
import { addLogEntry } from '../../storage/fetch-log.ts';
import { readFetchStates } from '../../storage/fetch-states.ts';
import type { LakeSourceRow } from '../../storage/lake-sources.ts';
import { refetchable } from '../../storage/refetchable.ts';
import { countCalls, readSourceState } from '../../storage/source-states.ts';
import type {
	Ask,
	Fault,
	SourceAnswer,
	SourcePart,
	Span,
	WeatherSource
} from '../../weather/source/contract.ts';
import type { LakeRecord } from '../lakes.ts';
import { callsFor, refusalFor, type Refusal } from './allowance.ts';
import type { Pace } from './pace.ts';
import { noteOutcome } from './outcome.ts';

/** A lake's use of a source, with all that asking needs. */
export interface Asking {
	lake: LakeRecord;
	use: LakeSourceRow;
	source: WeatherSource;
	/** What its answers are stored for. */
	asked: AskedOf;
	key: string | null;
	isOnDemand: boolean;
	pace: Pace;
	signal: AbortSignal;
}

/** What it takes to store an answer. */
export interface Storing {
	use: Pick<LakeSourceRow, 'id' | 'lake_id'>;
	asked: AskedOf;
}

export type Asked =
	| { kind: 'answered'; answer: SourceAnswer; faults: readonly Fault[] }
	| { kind: 'refused'; refusal: Refusal }
	/** Broken off, or source, station or place were changed meanwhile: nothing of it is stored. */
	| { kind: 'stopped' | 'outdated' };

/** What is done with an answer. */
export interface Taking {
	/** Tells how many hours and days it stored. */
	store: (answer: SourceAnswer) => Promise<number | 'outdated'>;
	/** Looks at what is stored then. */
	moreFaults: () => Promise<Fault[]>;
}

/** Asks a source once, where its limits allow it, stores what comes and writes the log. */
export async function askPart(
	ctx: Context,
	asking: Asking,
	part: SourcePart,
	span: Span,
	{ store, moreFaults }: Taking
): Promise<Asked> {
	const { source, signal } = asking;
	const calls = callsFor(source, part);
	const state = await readSourceState(ctx.db, asking.use.source_id);
	const refusal = refusalFor(source, state, calls, {
		now: ctx.now(),
		isOnDemand: asking.isOnDemand
	});
	if (refusal) {
		await log(ctx, asking, part, { outcome: 'notAsked', faults: [notAsked(refusal)] });
		return { kind: 'refused', refusal };
	}
	await asking.pace.turn(source, calls, signal);
	if (signal.aborted) return { kind: 'stopped' };
	const started_ms = performance.now();
	const ask = await askFor(ctx, asking, part, span);
	const answer = await ctx.weather.fetchWeather(source, ask, ctx.weather.settings);
	const duration_ms = Math.round(performance.now() - started_ms);
	const on = ctx.now().toISOString().slice(0, 10);
	const isStopped = signal.aborted;
	const noted = await refetchable(ctx.db, async (db) => {
		await countCalls(db, asking.use.source_id, on, answer.calls);
		return isStopped
			? null
			: storeAsAsked(db, asking.asked, (tx) =>
					noteOutcome({ ...ctx, db: tx }, asking, part, answer)
				);
	});
	if (isStopped) return { kind: 'stopped' };
	if (noted === 'outdated') return { kind: 'outdated' };
	const stored = answer.outcome === 'ok' ? await store(answer) : 0;
	if (stored === 'outdated') return { kind: 'outdated' };
	const isAnswered = answer.outcome !== 'failed';
	const faults = [...answer.faults, ...(isAnswered ? await moreFaults() : [])];
	await log(ctx, asking, part, { ...answer, faults, stored, duration_ms });
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

function notAsked({ text }: Refusal): Pick<Fault, 'code' | 'text'> {
	return { code: 'tooMany', text };
}

interface Entry {
	outcome: SourceAnswer['outcome'] | 'notAsked';
	faults: readonly Pick<Fault, 'code' | 'text'>[];
	stored?: number;
	calls?: number;
	bytes?: number;
	duration_ms?: number;
}

async function log(
	ctx: Context,
	{ use }: Asking,
	part: SourcePart,
	{ outcome, faults, stored = 0, calls = 0, bytes = 0, duration_ms = 0 }: Entry
): Promise<void> {
	const entry = {
		source_id: use.source_id,
		lake_id: use.lake_id,
		at: ctx.now().toISOString(),
		part,
		outcome,
		stored,
		calls,
		bytes,
		duration_ms,
		faults: JSON.stringify(faults.map(({ code, text }) => ({ code, text })))
	};
	await refetchable(ctx.db, (db) => addLogEntry(db, entry));
}
