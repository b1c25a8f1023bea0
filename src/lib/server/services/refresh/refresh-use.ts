import { daysBetween, type IsoDate } from '#lib/model/calendar.ts';
import type { Context } from '../../context.ts';
import { storeAsAsked } from '../../storage/as-asked.ts';
import { findLakeSourceRow, updateLakeSourceRow } from '../../storage/lake-sources.ts';
import { refetchable } from '../../storage/refetchable.ts';
import type { Fault, Span } from '../../weather/source/contract.ts';
import { localDay } from '../local-day.ts';
import { nextTurn } from '../next-turn.ts';
import type { Refusal } from './allowance.ts';
import { askPart, askTogether } from './ask-part.ts';
import type { Asked, Asking } from './asking.ts';
import { spansOfEarlierWinters } from './earlier-winters.ts';
import { planFor } from './plan-for.ts';
import { takingForecast, takingHistory } from './taking.ts';
import { asOneSpan, type Together } from './together.ts';

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
	const together = asOneSpan(asking.source, fresh.at(-1), plan.forecast);
	const before = together ? fresh.slice(0, -1) : fresh;
	// The day that runs is told by what was measured of it, and by the forecast for the rest.
	let isNewTold = await askSpans(ctx, asking, told, before, progress);
	if (together && isNewTold) {
		isNewTold = await askBoth(ctx, asking, told, together, progress);
	} else if (plan.forecast && !told.isOutdated) {
		hear(told, await askForecast(ctx, asking, plan.forecast));
	}
	if (isNewTold && !told.isOutdated && (await askSpans(ctx, asking, told, missing, progress))) {
		await noteAskedFrom(ctx, asking, plan.wantedFrom);
	}
	return asRefreshed(told, asking.signal);
}

/** Brings the earlier winters that have a freeze-up on record, as far as the limits allow. */
export async function fetchEarlierWinters(
	ctx: Context,
	asking: Asking,
	onProgress: OnProgress = () => {}
): Promise<Refreshed> {
	const { use, lake, source } = asking;
	const today = localDay(ctx.now(), lake.timeZone);
	const spans = await spansOfEarlierWinters(ctx, use.id, lake.id, source, today);
	const told: Told = { faults: [], refusal: null, isFailed: false, isOutdated: false };
	const progress = countDays(spans, onProgress);
	for (const span of spans) {
		if (!hear(told, await askHistory(ctx, asking, span, false))) break;
		progress.add(length(span));
		await nextTurn();
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

/** What is new and what is to come, of a source that answers both at once. */
async function askBoth(
	ctx: Context,
	asking: Asking,
	told: Told,
	{ past, whole }: Together,
	progress: DayCount
): Promise<boolean> {
	const asked = await askTogether(ctx, asking, whole, {
		history: takingHistory(ctx, asking, past, progress.isLast(length(past))),
		forecast: takingForecast(ctx, asking)
	});
	const isHistoryTold = hear(told, asked.history);
	if (asked.history.kind === 'answered') hear(told, asked.forecast);
	if (!isHistoryTold) return false;
	await noteAskedFrom(ctx, asking, past.from);
	progress.add(length(past));
	return true;
}

function askHistory(ctx: Context, asking: Asking, span: Span, isLast: boolean): Promise<Asked> {
	return askPart(ctx, asking, 'history', span, takingHistory(ctx, asking, span, isLast));
}

function askForecast(ctx: Context, asking: Asking, span: Span): Promise<Asked> {
	return askPart(ctx, asking, 'forecast', span, takingForecast(ctx, asking));
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
