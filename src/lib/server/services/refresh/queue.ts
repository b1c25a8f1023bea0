import type { Context } from '../../context.ts';
import { listDueRows } from '../../storage/lake-sources.ts';
import { logFailure } from '../failure.ts';
import { mayGoOn } from '../lease.ts';
import { logEvent } from '../log.ts';
import { LONGEST_WAIT_MIN } from './allowance.ts';
import { forgetKeepingUp } from './kept-up.ts';
import { newPace, type Pace } from './pace.ts';
import { newJob, type Job, type Wish } from './progress.ts';
import { runJob } from './run-job.ts';

/**
 * Between two lakes of a source: it is not asked hard upon, and pages are answered meanwhile. Measured
 * with `npm run bench`.
 */
const BREATH_MS = 1000;

/** What waits for one source, and its pace. */
interface Line {
	jobs: Job[];
	running: Promise<void> | null;
	pace: Pace;
}

interface Refreshing {
	lines: Map<string, Line>;
	/** The last job of each use, to be told of. */
	latest: Map<number, Job>;
	stop: AbortController;
}

/** Of each database, what is being refreshed. */
const refreshing = new WeakMap<Context['db'], Refreshing>();

/**
 * Puts a use of a source into the line of that source, which is asked for one lake at a time. What
 * waits already is not put twice; a person's wish goes first.
 */
export function enqueue(
	ctx: Context,
	use: { id: number; source_id: string; lake_id: string },
	isOnDemand: boolean,
	wish: Wish = 'new'
): Job {
	const all = refreshingOf(ctx);
	const line = lineOf(ctx, all, use.source_id);
	const waiting = line.jobs.find(
		(job) => job.useId === use.id && job.wish === wish && job.progress.status === 'waiting'
	);
	const job = waiting ?? newJob(use, isOnDemand, wish, ctx.now());
	if (!waiting && isOnDemand) line.jobs.unshift(job);
	else if (!waiting) line.jobs.push(job);
	job.isOnDemand ||= isOnDemand;
	if (isOnDemand) forgetKeepingUp(ctx, use.lake_id);
	all.latest.set(use.id, job);
	line.running ??= work(ctx, line, all.stop.signal);
	return job;
}

/** How the last refresh of a use went; `null` when the server has not asked since it started. */
export function latestJob(ctx: Context, useId: number): Job | null {
	return refreshing.get(ctx.db)?.latest.get(useId) ?? null;
}

/** Resolves when nothing waits any more. */
export async function whenIdle(ctx: Context): Promise<void> {
	const lines = [...(refreshing.get(ctx.db)?.lines.values() ?? [])];
	await Promise.all(lines.map(({ running }) => running));
}

/** Breaks off what is asked and forgets what waits; resolves when nothing runs any more. */
export async function stopRefreshing(ctx: Context): Promise<void> {
	const all = refreshing.get(ctx.db);
	if (!all) return;
	all.stop.abort();
	await whenIdle(ctx);
	refreshing.delete(ctx.db);
}

function refreshingOf(ctx: Context): Refreshing {
	const known = refreshing.get(ctx.db);
	if (known) return known;
	const all = { lines: new Map(), latest: new Map(), stop: new AbortController() };
	refreshing.set(ctx.db, all);
	return all;
}

function lineOf(ctx: Context, { lines }: Refreshing, sourceId: string): Line {
	const known = lines.get(sourceId);
	if (known) return known;
	const line = { jobs: [], running: null, pace: newPace(ctx.weather, () => performance.now()) };
	lines.set(sourceId, line);
	return line;
}

async function work(ctx: Context, line: Line, signal: AbortSignal): Promise<void> {
	for (;;) {
		const job = line.jobs.shift();
		if (!job) {
			// At once: what is put into the line from here on starts it anew.
			line.running = null;
			return;
		}
		try {
			if (await isStillWanted(ctx, job)) await runJob(ctx, job, line.pace, signal);
			else job.progress.status = 'stopped';
			if (line.jobs.length > 0) await ctx.weather.wait(BREATH_MS, signal);
		} catch (cause) {
			job.progress.status = 'failed';
			// What is broken off by the end of the server may find its database closed.
			if (!signal.aborted) {
				const id = logFailure(`refreshing the weather of ${job.lakeId}`, cause);
				job.progress.sentences = [`Something failed here; the server's log has it as ${id}.`];
			}
		} finally {
			job.progress.finishedAt = ctx.now();
			logEvent('refresh', { lake: job.lakeId, use: job.useId, status: job.progress.status });
		}
	}
}

/** What the schedule wants may have been done by another process, which has taken the work over. */
async function isStillWanted(ctx: Context, { isOnDemand, useId }: Job): Promise<boolean> {
	if (isOnDemand) return true;
	if (!mayGoOn(ctx, 'refreshing')) return false;
	const due = await listDueRows(ctx.db, ctx.now(), LONGEST_WAIT_MIN);
	return due.some(({ id }) => id === useId);
}
