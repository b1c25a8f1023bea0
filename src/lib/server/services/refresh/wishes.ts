import type { Context } from '../../context.ts';
import {
	findLastWish,
	listOpenWishes,
	updateWish,
	writeWish,
	type RefreshWishRow
} from '../../storage/refresh-wishes.ts';
import { isDoneElsewhere } from '../lease.ts';
import { newJob, type Job, type Wish } from './progress.ts';
import { enqueue, latestJob } from './queue.ts';

interface Use {
	id: number;
	source_id: string;
	lake_id: string;
}

/**
 * A person wants a source asked now. Where another process refreshes, so that a source's limits hold
 * for all of them together, the wish is left in the database for it.
 */
export async function wish(ctx: Context, use: Use, what: Wish = 'new'): Promise<void> {
	if (!(await isDoneElsewhere(ctx, 'refreshing'))) {
		enqueue(ctx, use, true, what);
		return;
	}
	const at = ctx.now();
	await writeWish(ctx.db, {
		lake_source_id: use.id,
		wish: what,
		wished_at: at.toISOString(),
		progress: JSON.stringify(newJob(use, true, what, at).progress),
		is_over: 0
	});
}

/** Of each database, the jobs that wishes from elsewhere have become here. */
const taken = new WeakMap<Context['db'], Map<string, Job>>();

/** Puts wishes from elsewhere into the lines of their sources, and writes down how they go. */
export async function takeWishes(ctx: Context): Promise<void> {
	const jobs = taken.get(ctx.db) ?? new Map<string, Job>();
	taken.set(ctx.db, jobs);
	const open = await listOpenWishes(ctx.db);
	for (const row of open) {
		const { lake_source_id: id, source_id, lake_id, wish: what } = row;
		const job = jobs.get(keyOf(row)) ?? enqueue(ctx, { id, source_id, lake_id }, true, what);
		jobs.set(keyOf(row), job);
		const progress = JSON.stringify(job.progress);
		const isOver = job.progress.finishedAt !== null;
		if (progress === row.progress && !isOver) continue;
		await updateWish(ctx.db, row, { progress, is_over: isOver ? 1 : 0 });
	}
	const keys = new Set(open.map(keyOf));
	for (const key of jobs.keys()) if (!keys.has(key)) jobs.delete(key);
}

function keyOf({ lake_source_id, wish: what, wished_at }: RefreshWishRow): string {
	return `${lake_source_id} ${what} ${wished_at}`;
}

/** How the last refresh of a use goes or went, here or by a wish elsewhere; `null` without one. */
export async function lastProgress(ctx: Context, useId: number): Promise<Job['progress'] | null> {
	const own = latestJob(ctx, useId)?.progress ?? null;
	const row = await findLastWish(ctx.db, useId);
	const elsewhere = row ? (JSON.parse(row.progress, asDates) as Job['progress']) : null;
	if (own === null || elsewhere === null) return own ?? elsewhere;
	return (own.startedAt ?? 0) >= (elsewhere.startedAt ?? 0) ? own : elsewhere;
}

/** Whether one of so many uses waits or is asked now, here or by a wish elsewhere. */
export async function isAnyAsked(ctx: Context, uses: readonly { id: number }[]): Promise<boolean> {
	if (uses.some(({ id }) => latestJob(ctx, id)?.progress.finishedAt === null)) return true;
	const open = new Set((await listOpenWishes(ctx.db)).map((row) => row.lake_source_id));
	return uses.some(({ id }) => open.has(id));
}

function asDates(key: string, value: unknown): unknown {
	return key.endsWith('At') && typeof value === 'string' ? new Date(value) : value;
}
