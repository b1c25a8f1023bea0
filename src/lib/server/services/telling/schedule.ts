import type { Context } from '../../context.ts';
import { listTellingRows } from '../../storage/telling.ts';
import { changesSince, lastChange } from '../../storage/lake-changes.ts';
import { logFailure } from '../failure.ts';
import { keepLease, type Lease } from '../lease.ts';
import { NotFound } from '../not-found.ts';
import { lookAt } from './look.ts';
import { onTellingNudge } from './nudge.ts';
import { deliverDue } from './webhook/deliver.ts';
import { TIME_OUT_MS } from './webhook/post.ts';

const ROUND_MS = 60_000;
/** Several changes in a row are looked at together. */
const NUDGED_MS = 500;
/** Pages are served first. */
const FIRST_ROUND_MS = 15_000;
/** A message has its time, and what came of it is noted, before another process may send it. */
const POST_MS = TIME_OUT_MS + 2_000;
/** A lake of which nothing was said is looked at so often: cheap where nothing has changed. */
const LOOK_MS = 5 * 60_000;

/** How soon is seen what another process on the database has written. */
const CHANGES_MS = 2_000;

/**
 * Looks at each lake whose telling is on, after its weather was refreshed and every few minutes, and
 * sends what waits, where no other process on the database does. What was told is stored, so that it
 * may be started and cut off at any time.
 */
export function startTelling(ctx: Context): { stop: () => Promise<void> } {
	const stop = new AbortController();
	const lease = keepLease(ctx, 'telling');
	const looked = new Map<string, number>();
	const nudged = new Set<string>();
	let timer: NodeJS.Timeout | null = null;
	let running: Promise<void> = Promise.resolve();
	const plan = (after_ms: number): void => {
		if (timer) clearTimeout(timer);
		if (!stop.signal.aborted) timer = setTimeout(begin, after_ms).unref();
	};
	const begin = (): void => {
		running = running.then(() => round(ctx, { looked, nudged, lease, signal: stop.signal }));
		void running.then(() => plan(nudged.size > 0 ? NUDGED_MS : ROUND_MS));
	};
	plan(FIRST_ROUND_MS);
	const nudge = (lakeIds: readonly string[]) => {
		for (const id of lakeIds) nudged.add(id);
		plan(NUDGED_MS);
	};
	onTellingNudge(ctx, (lakeId) => nudge([lakeId]));
	const watch = setInterval(watcher(ctx, lease, nudge), CHANGES_MS).unref();
	return {
		async stop() {
			stop.abort();
			onTellingNudge(ctx, null);
			if (timer) clearTimeout(timer);
			clearInterval(watch);
			await running;
			await lease.release();
		}
	};
}

interface Round {
	/** When each lake was last looked at, by the running clock: the server's may be set. */
	looked: Map<string, number>;
	nudged: Set<string>;
	lease: Lease;
	signal: AbortSignal;
}

/** Nudges for what any process has written since it last looked, and once when the work becomes its own. */
function watcher(
	ctx: Context,
	lease: Lease,
	nudge: (lakeIds: readonly string[]) => void
): () => void {
	let last: number | null = null;
	let isBusy = false;
	return async () => {
		if (!lease.isHeldFor(0)) last = null;
		else if (!isBusy) await look();
	};
	async function look(): Promise<void> {
		isBusy = true;
		try {
			const isNew = last === null;
			const changes = await changesSince(ctx.db, (last ??= await lastChange(ctx.db)));
			last = changes.last;
			if (isNew || changes.lakeIds.length > 0) nudge(changes.lakeIds);
		} catch (cause) {
			if (lease.isHeldFor(0)) logFailure('looking for changes to tell of', cause);
		} finally {
			isBusy = false;
		}
	}
}

async function round(ctx: Context, { looked, nudged, lease, signal }: Round): Promise<void> {
	if (!lease.isHeldFor(0)) return nudged.clear();
	try {
		const wanted = new Set(nudged);
		nudged.clear();
		for (const { lake_id } of await listTellingRows(ctx.db)) {
			if (signal.aborted || !lease.isHeldFor(0)) return;
			const isDue = performance.now() - (looked.get(lake_id) ?? -Infinity) >= LOOK_MS;
			if (!isDue && !wanted.has(lake_id)) continue;
			looked.set(lake_id, performance.now());
			await lookQuietly(ctx, lake_id, signal);
		}
		await deliverDue(ctx, { signal, mayPost: () => lease.isHeldFor(POST_MS) });
	} catch (cause) {
		// What is broken off by the end of the server may find its database closed.
		if (!signal.aborted) logFailure('telling what is new', cause);
	}
}

/** One lake that fails keeps no other from being told of. */
async function lookQuietly(ctx: Context, lakeId: string, signal: AbortSignal): Promise<void> {
	try {
		await lookAt(ctx, lakeId);
	} catch (cause) {
		if (cause instanceof NotFound || signal.aborted) return;
		logFailure(`looking at what is new of ${lakeId}`, cause);
	}
}
