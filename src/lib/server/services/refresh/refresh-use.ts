import { daysBetween, type IsoDate } from '#lib/model/calendar.ts';
import type { Context } from '../../context.ts';
import { storeAsAsked } from '../../storage/as-asked.ts';
import { findLakeSourceRow, updateLakeSourceRow } from '../../storage/lake-sources.ts';
import { refetchable } from '../../storage/refetchable.ts';
import { callFor, type Fault, type Span } from '../../weather/source/contract.ts';
import { joinChanged } from '../joining.ts';
import { nextTurn } from '../next-turn.ts';
import type { Refusal } from './allowance.ts';
import { askPart, type Asked, type Asking } from './ask-part.ts';
import { faultsOverTime } from './over-time.ts';
import { planFor } from './plan-for.ts';
import { storeForecast } from './store-forecast.ts';
import { storeHistory } from './store-history.ts';

export interface Refreshed {
	/** `outdated`: source, station or place were changed meanwhile; it has to be asked anew. */
	status: 'done' | 'failed' | 'notAsked' | 'stopped' | 'outdated';
	/** What was wrong, or why it was not asked, in sentences. */
	sentences: string[];
	refusal: Refusal | null;
}

/** Told as the days of history come in. */
export type OnProgress = (doneDays: number, wantedDays: number) => void;

/** Brings a lake's use of one source up to date: what is new, what is to come, what is missing. */
export async function refreshUse(
	ctx: Context,
	asking: Asking,
	onProgress: OnProgress = () => {}
): Promise<Refreshed> {
	const { plan, tooSoon } = await planFor(ctx, asking);
	const told: Told = { faults: [], refusal: tooSoon, isFailed: false, isOutdated: false };
	const progress = countDays(plan.history, onProgress);
	const [fresh, missing] = [
		plan.history.slice(0, plan.newSpans),
		plan.history.slice(plan.newSpans)
	];
	// The day that runs is told by what was measured of it, and by the forecast for the rest.
	const isNewTold = await askSpans(ctx, asking, told, fresh, progress);
	if (plan.forecast && !told.isOutdated) hear(told, await askForecast(ctx, asking, plan.forecast));
	if (isNewTold && !told.isOutdated && (await askSpans(ctx, asking, told, missing, progress))) {
		await noteAskedFrom(ctx, asking, plan.wantedFrom);
	}
	return asRefreshed(told, asking.signal);
}

interface Told {
	faults: Fault[];
	refusal: Refusal | null;
	isFailed: boolean;
	isOutdated: boolean;
}

/** False when nothing more of the same is to be asked now. */
function hear(told: Told, asked: Asked): boolean {
	if (asked.kind === 'refused') {
		told.refusal = asked.refusal;
		return false;
	}
	if (asked.kind !== 'answered') {
		told.isOutdated ||= asked.kind === 'outdated';
		return false;
	}
	told.faults.push(...asked.faults);
	told.isFailed ||= asked.answer.outcome === 'failed';
	return asked.answer.outcome !== 'failed';
}

function asRefreshed(told: Told, signal: AbortSignal): Refreshed {
	const { faults, refusal, isFailed, isOutdated } = told;
	const sentences = [
		...new Set([...faults, ...(refusal ? [refusal] : [])].map(({ text }) => text))
	];
	if (signal.aborted) return { status: 'stopped', sentences, refusal };
	if (isOutdated) return { status: 'outdated', sentences, refusal };
	if (isFailed) return { status: 'failed', sentences, refusal };
	return { status: refusal ? 'notAsked' : 'done', sentences, refusal };
}

interface DayCount {
	/** True when no more are to come after this many. */
	isLast(days: number): boolean;
	add(days: number): void;
}

function countDays(spans: readonly Span[], onProgress: OnProgress): DayCount {
	const wanted = spans.reduce((days, span) => days + length(span), 0);
	let done = 0;
	onProgress(done, wanted);
	return {
		isLast: (days) => done + days >= wanted,
		add: (days) => onProgress((done += days), wanted)
	};
}

/** Asks for span after span, each stored before the next; false when one was not answered. */
async function askSpans(
	ctx: Context,
	asking: Asking,
	told: Told,
	spans: readonly Span[],
	progress: DayCount
): Promise<boolean> {
	for (const span of spans) {
		const isLast = progress.isLast(length(span));
		if (!hear(told, await askHistory(ctx, asking, span, isLast))) return false;
		await noteAskedFrom(ctx, asking, span.from);
		progress.add(length(span));
		await nextTurn();
	}
	return true;
}

/** Once its last days are stored, the record is looked at as a whole. */
function askHistory(ctx: Context, asking: Asking, span: Span, isLast: boolean): Promise<Asked> {
	const { use, source, lake } = asking;
	const mapping = callFor(source, 'history')?.mapping;
	return askPart(ctx, asking, 'history', span, {
		async store(answer) {
			if (!mapping) return 0;
			const stored = await storeHistory(ctx.db, { ...asking, mapping }, answer, span);
			await joinChanged(ctx, use.lake_id);
			return stored;
		},
		moreFaults: async () => (isLast ? faultsOverTime(ctx, use, source, lake.timeZone) : [])
	});
}

function askForecast(ctx: Context, asking: Asking, span: Span): Promise<Asked> {
	return askPart(ctx, asking, 'forecast', span, {
		store: (answer) => storeForecast(ctx, asking, answer),
		moreFaults: async () => []
	});
}

/** Before this day nothing has been asked for. */
async function noteAskedFrom(ctx: Context, { use, asked }: Asking, on: IsoDate): Promise<void> {
	const before = (await findLakeSourceRow(ctx.db, use.id))?.asked_from ?? null;
	if (before !== null && before <= on) return;
	await refetchable(ctx.db, (db) =>
		storeAsAsked(db, asked, (tx) => updateLakeSourceRow(tx, use.id, { asked_from: on }))
	);
}

function length({ from, to }: Span): number {
	return daysBetween(from, to) + 1;
}
