import type { Context } from '../../context.ts';
import { storeAsAsked } from '../../storage/as-asked.ts';
import { readFetchStates } from '../../storage/fetch-states.ts';
import {
	findLakeSourceRow,
	listUsesOfSource,
	updateLakeSourceRow
} from '../../storage/lake-sources.ts';
import { refetchable } from '../../storage/refetchable.ts';
import type { WeatherSource } from '../../weather/source/contract.ts';
import { getLake } from '../lakes.ts';
import { openSource } from '../sources/sources.ts';
import { nudgeTelling } from '../telling/nudge.ts';
import { backOff_min, callsLeftForToday, interval_min, LONGEST_WAIT_MIN } from './allowance.ts';
import type { Asking } from './asking.ts';
import { beginKeepingUp, endKeepingUp, forgetKeepingUp } from './kept-up.ts';
import type { Pace } from './pace.ts';
import type { Job } from './progress.ts';
import { fetchEarlierWinters, refreshUse, type Refreshed } from './refresh-use.ts';
import { forgetWhatIsAhead } from './set-back.ts';

/** Spreads the lakes of a source by up to this part of its interval. Our choice. */
const JITTER = 0.1;
/** Within so many minutes after a limit or a wait has ended. */
const AFTER_WAIT_MIN = 10;

/** Refreshes one use of a source and says when it is due again. */
export async function runJob(
	ctx: Context,
	job: Job,
	pace: Pace,
	signal: AbortSignal
): Promise<void> {
	const { progress } = job;
	if (!signal.aborted) await forgetWhatIsAhead(ctx);
	const asking = signal.aborted ? null : await askingFor(ctx, job, pace, signal);
	if (!asking) {
		progress.status = 'stopped';
		return;
	}
	progress.status = 'asking';
	const isNew = job.wish === 'new';
	if (isNew) await dueAgain(ctx, asking, await nextAfter(ctx, asking, null));
	const refreshed = await keepingUp(ctx, job, () =>
		(isNew ? refreshUse : fetchEarlierWinters)(ctx, asking, (doneDays, wantedDays) => {
			Object.assign(progress, { doneDays, wantedDays });
		})
	);
	const { status, sentences } = refreshed;
	// What a person has just corrected is asked in its new form at once.
	if (status === 'outdated') return runJob(ctx, job, pace, signal);
	if (isNew && status !== 'stopped')
		await dueAgain(ctx, asking, await nextAfter(ctx, asking, refreshed));
	progress.sentences = sentences;
	progress.status = status;
	nudgeTelling(ctx, job.lakeId);
}

/** Pages may show what stood before while the schedule works, and never to who asked for what is new. */
async function keepingUp<Result>(
	ctx: Context,
	job: Job,
	work: () => Promise<Result>
): Promise<Result> {
	if (job.isOnDemand) forgetKeepingUp(ctx, job.lakeId);
	else beginKeepingUp(ctx, job.lakeId);
	try {
		return await work();
	} finally {
		if (job.isOnDemand) forgetKeepingUp(ctx, job.lakeId);
		else endKeepingUp(ctx, job.lakeId);
	}
}

/** `null` when the source has gone, is not used any more, is switched off or cannot be read. */
async function askingFor(
	ctx: Context,
	job: Job,
	pace: Pace,
	signal: AbortSignal
): Promise<Asking | null> {
	const { useId, isOnDemand } = job;
	const use = await findLakeSourceRow(ctx.db, useId);
	if (!use || use.position === null) return null;
	const open = await openSource(ctx, use.source_id);
	if (!open || open.row.is_on === 0) {
		// Setting it up anew makes it due at once.
		const next_at = later(ctx.now(), LONGEST_WAIT_MIN).toISOString();
		await refetchable(ctx.db, (db) => updateLakeSourceRow(db, useId, { next_at }));
		return null;
	}
	const lake = await getLake(ctx, use.lake_id);
	const { source, key } = open;
	const { latitude, longitude } = lake;
	const { station } = use;
	const reserve = job.wish === 'new' ? 0 : await reserveFor(ctx, use.source_id, source);
	const asked = { useId, config: open.row.config, station, latitude, longitude };
	return { lake, use, source, asked, key, isOnDemand, reserve, pace, signal };
}

/** Calls that keeping up needs for the rest of the day. */
async function reserveFor(ctx: Context, sourceId: string, source: WeatherSource): Promise<number> {
	const lakes = (await listUsesOfSource(ctx.db, sourceId)).length;
	return callsLeftForToday(source, lakes, ctx.now());
}

/** When it is due: before it is asked as if all went well, lest a crash make it asked without end. */
async function nextAfter(ctx: Context, asking: Asking, refreshed: Refreshed | null): Promise<Date> {
	const { use } = asking;
	const now = ctx.now();
	const refusal = refreshed?.refusal ?? null;
	const planned = use.next_at === null ? now : new Date(use.next_at);
	// What a person wished for too soon puts nothing off.
	if (refusal?.kind === 'holds' && planned > now) return planned;
	const due =
		refusal?.kind === 'waits'
			? later(refusal.until, AFTER_WAIT_MIN * ctx.weather.random())
			: await usuallyNext(ctx, asking, refreshed?.status === 'failed');
	const latest = later(now, LONGEST_WAIT_MIN);
	return due < latest ? due : latest;
}

async function usuallyNext(
	ctx: Context,
	{ source, use }: Asking,
	isFailed: boolean
): Promise<Date> {
	const states = await readFetchStates(ctx.db, use.id);
	const both = [states.history, states.forecast];
	const failures = Math.max(...both.map((state) => state?.failures ?? 0));
	const lakes = (await listUsesOfSource(ctx.db, use.source_id)).length;
	const usual_min = isFailed ? backOff_min(failures) : interval_min(source, lakes);
	const due = later(ctx.now(), usual_min * (1 + JITTER * ctx.weather.random()));
	const held = isFailed ? [] : both.map((state) => new Date(state?.fresh_until_at ?? 0));
	return [due, ...held].reduce((last, at) => (at > last ? at : last));
}

function later(at: Date, minutes: number): Date {
	return new Date(at.getTime() + minutes * 60_000);
}

/** A change of the source meanwhile has made it due at once, and that stands. */
async function dueAgain(ctx: Context, { use, asked }: Asking, at: Date): Promise<void> {
	await refetchable(ctx.db, (db) =>
		storeAsAsked(db, asked, (tx) => updateLakeSourceRow(tx, use.id, { next_at: at.toISOString() }))
	);
}
