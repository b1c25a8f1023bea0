import type { Context } from '../../context.ts';
import { listTellingRows } from '../../storage/telling.ts';
import { logFailure } from '../failure.ts';
import { NotFound } from '../not-found.ts';
import { lookAt } from './look.ts';
import { onTellingNudge } from './nudge.ts';
import { deliverDue } from './webhook/deliver.ts';

const ROUND_MS = 60_000;
/** Several changes in a row are looked at together. */
const NUDGED_MS = 500;
/** Pages are served first. */
const FIRST_ROUND_MS = 15_000;
/** A lake of which nothing was said is looked at so often: cheap where nothing has changed. */
const LOOK_MS = 5 * 60_000;

/**
 * Looks at each lake whose telling is on, after its weather was refreshed and every few minutes, and
 * sends what waits. What was told is stored, so that it may be started and cut off at any time.
 */
export function startTelling(ctx: Context): { stop: () => Promise<void> } {
	const stop = new AbortController();
	const looked = new Map<string, number>();
	const nudged = new Set<string>();
	let timer: NodeJS.Timeout | null = null;
	let running: Promise<void> = Promise.resolve();
	const plan = (after_ms: number): void => {
		if (timer) clearTimeout(timer);
		if (!stop.signal.aborted) timer = setTimeout(begin, after_ms).unref();
	};
	const begin = (): void => {
		running = running.then(() => round(ctx, { looked, nudged, signal: stop.signal }));
		void running.then(() => plan(nudged.size > 0 ? NUDGED_MS : ROUND_MS));
	};
	plan(FIRST_ROUND_MS);
	onTellingNudge(ctx, (lakeId) => {
		nudged.add(lakeId);
		plan(NUDGED_MS);
	});
	return {
		async stop() {
			stop.abort();
			onTellingNudge(ctx, null);
			if (timer) clearTimeout(timer);
			await running;
		}
	};
}

interface Round {
	/** When each lake was last looked at, by the server's clock. */
	looked: Map<string, number>;
	nudged: Set<string>;
	signal: AbortSignal;
}

async function round(ctx: Context, { looked, nudged, signal }: Round): Promise<void> {
	try {
		const wanted = new Set(nudged);
		nudged.clear();
		for (const { lake_id } of await listTellingRows(ctx.db)) {
			if (signal.aborted) return;
			const isDue = ctx.now().getTime() - (looked.get(lake_id) ?? -Infinity) >= LOOK_MS;
			if (!isDue && !wanted.has(lake_id)) continue;
			looked.set(lake_id, ctx.now().getTime());
			await lookQuietly(ctx, lake_id, signal);
		}
		await deliverDue(ctx, signal);
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
