import type { Context } from '../../context.ts';
import { listDueRows } from '../../storage/lake-sources.ts';
import { logFailure } from '../failure.ts';
import { keepLease, type Lease } from '../lease.ts';
import { LONGEST_WAIT_MIN } from './allowance.ts';
import { onNudge } from './nudge.ts';
import { enqueue, stopRefreshing } from './queue.ts';
import { forgetWhatIsAhead } from './set-back.ts';
import { takeWishes } from './wishes.ts';

const ROUND_MS = 60_000;
/** Several changes in a row are looked at together. */
const NUDGED_MS = 500;
/** The first round waits until pages are served, and differs from server to server. */
const FIRST_ROUND_MS = 10_000;

/** `FROSTLEDGER_REFRESH=off`: sources are asked only when a person wants it. */
export function isRefreshOn(environment: Readonly<Record<string, string | undefined>>): boolean {
	return environment['FROSTLEDGER_REFRESH']?.trim().toLowerCase() !== 'off';
}

/** How soon a person's wish that reached another process is seen. */
const WISHES_MS = 2_000;

/** Looks every minute for what is due, where no other process on the database does. */
export function startSchedule(ctx: Context): { stop: () => Promise<void> } {
	const lease = keepLease(ctx, 'refreshing');
	let timer: NodeJS.Timeout | null = null;
	let isStopped = false;
	const round = async (): Promise<void> => {
		try {
			if (lease.isHeldFor(0)) await enqueueDue(ctx);
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
	const wishes = wheneverHeld(lease, () => takeWishes(ctx));
	onNudge(ctx, () => plan(NUDGED_MS));
	return {
		async stop() {
			isStopped = true;
			onNudge(ctx, null);
			if (timer) clearTimeout(timer);
			clearInterval(wishes);
			await stopRefreshing(ctx);
			await lease.release();
		}
	};
}

function wheneverHeld(lease: Lease, work: () => Promise<void>): NodeJS.Timeout {
	let isBusy = false;
	const look = async (): Promise<void> => {
		if (isBusy || !lease.isHeldFor(0)) return;
		isBusy = true;
		try {
			await work();
		} catch (cause) {
			if (lease.isHeldFor(0)) logFailure('looking for wishes', cause);
		} finally {
			isBusy = false;
		}
	};
	return setInterval(() => void look(), WISHES_MS).unref();
}

/** Puts what is due into the lines of its sources; tells how many uses that are. */
export async function enqueueDue(ctx: Context): Promise<number> {
	await forgetWhatIsAhead(ctx);
	const due = await listDueRows(ctx.db, ctx.now(), LONGEST_WAIT_MIN);
	for (const use of due) enqueue(ctx, use, false);
	return due.length;
}
