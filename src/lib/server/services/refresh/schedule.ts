import type { Context } from '../../context.ts';
import { listDueRows } from '../../storage/lake-sources.ts';
import { logFailure } from '../failure.ts';
import { onNudge } from './nudge.ts';
import { enqueue, stopRefreshing } from './queue.ts';

const ROUND_MS = 60_000;
/** Several changes in a row are looked at together. */
const NUDGED_MS = 500;
/** The first round waits until pages are served, and differs from server to server. */
const FIRST_ROUND_MS = 10_000;

/** `FROSTLEDGER_REFRESH=off`: sources are asked only when a person wants it. */
export function isRefreshOn(environment: Readonly<Record<string, string | undefined>>): boolean {
	return environment['FROSTLEDGER_REFRESH']?.trim().toLowerCase() !== 'off';
}

/** Looks every minute for what is due. */
export function startSchedule(ctx: Context): { stop: () => Promise<void> } {
	let timer: NodeJS.Timeout | null = null;
	let isStopped = false;
	const round = async (): Promise<void> => {
		try {
			await enqueueDue(ctx);
		} catch (cause) {
			if (!isStopped) logFailure('looking for weather that is due', cause);
		}
		plan(ROUND_MS);
	};
	const plan = (after_ms: number): void => {
		if (timer) clearTimeout(timer);
		if (!isStopped) timer = setTimeout(() => void round(), after_ms).unref();
	};
	plan(FIRST_ROUND_MS * (1 + ctx.weather.random()));
	onNudge(ctx, () => plan(NUDGED_MS));
	return {
		async stop() {
			isStopped = true;
			onNudge(ctx, null);
			if (timer) clearTimeout(timer);
			await stopRefreshing(ctx);
		}
	};
}

/** Puts what is due into the lines of its sources; tells how many uses that are. */
export async function enqueueDue(ctx: Context): Promise<number> {
	const due = await listDueRows(ctx.db, ctx.now());
	for (const use of due) enqueue(ctx, use, false);
	return due.length;
}
