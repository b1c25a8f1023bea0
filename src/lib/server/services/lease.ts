import { randomUUID } from 'node:crypto';
import { setTimeout as wait } from 'node:timers/promises';
import type { Context } from '../context.ts';
import { giveUpLease, isLeaseHeld, takeLease } from '../storage/leases.ts';
import { logFailure } from './failure.ts';
import { logEvent } from './log.ts';

/** Work that is done by one process of those that share a database. */
export type Work = 'refreshing' | 'telling' | 'demo';

/** A holder that died is replaced after so long, and a try more. Our choice. */
const SPAN_MS = 30_000;
const TRY_MS = 5_000;

export interface Lease {
	/**
	 * Whether the work is this process's for so long to come: by its own running clock, from before it
	 * asked, so that it stops before another may begin, whatever the clocks of their machines say.
	 */
	isHeldFor(time_ms: number): boolean;
	/** Takes it if nobody has it; true when it is held then. */
	take(): Promise<boolean>;
	/** Lets another process have it at once. */
	release(): Promise<void>;
}

/** Of each database, the leases that this process strives for. */
const leases = new WeakMap<Context['db'], Map<Work, Lease>>();

/** Takes the lease of a work whenever nobody has it, and keeps it until it is released. */
export function keepLease(ctx: Context, work: Work): Lease {
	const holder = randomUUID();
	let heldUntil_ms = -Infinity;
	let timer: NodeJS.Timeout | null = null;
	let isReleased = false;
	const isHeldFor = (time_ms: number) => performance.now() + time_ms < heldUntil_ms;
	const take = async (): Promise<boolean> => {
		const asked_ms = performance.now();
		const hadIt = isHeldFor(0);
		if (isReleased) return false;
		if (await takeLease(ctx.db, work, holder, SPAN_MS / 1000)) heldUntil_ms = asked_ms + SPAN_MS;
		if (isHeldFor(0) !== hadIt) logEvent('lease', { work, isHeld: !hadIt });
		return isHeldFor(0);
	};
	let trying = Promise.resolve();
	const tryOn = (): void => {
		trying = take()
			.catch((cause: unknown) => {
				if (!isReleased) logFailure(`taking the lease of ${work}`, cause);
			})
			.then(() => {
				if (!isReleased) timer = setTimeout(tryOn, TRY_MS).unref();
			});
	};
	tryOn();
	const lease: Lease = {
		isHeldFor,
		take,
		async release() {
			isReleased = true;
			if (timer) clearTimeout(timer);
			await trying;
			heldUntil_ms = -Infinity;
			leases.get(ctx.db)?.delete(work);
			await giveUpLease(ctx.db, work, holder).catch(() => undefined);
		}
	};
	const ofDatabase = leases.get(ctx.db) ?? new Map<Work, Lease>();
	leases.set(ctx.db, ofDatabase.set(work, lease));
	return lease;
}

/** Whether a work may go on here: it is this process's, or leases are not kept in it at all. */
export function mayGoOn({ db }: Context, work: Work): boolean {
	return leases.get(db)?.get(work)?.isHeldFor(0) ?? true;
}

/** Whether another process does a work; this one takes it where nobody does. */
export async function isDoneElsewhere({ db }: Context, work: Work): Promise<boolean> {
	const lease = leases.get(db)?.get(work);
	if (!lease) return isLeaseHeld(db, work);
	return !lease.isHeldFor(0) && !(await lease.take());
}

const ALONE_MS = 30_000;
const ALONE_TRY_MS = 200;

/** Does what takes some seconds while no other process does it; waits for one that does. */
export async function alone<Result>(
	{ db }: Context,
	work: Work,
	task: () => Promise<Result>
): Promise<Result> {
	const holder = randomUUID();
	while (!(await takeLease(db, work, holder, ALONE_MS / 1000))) await wait(ALONE_TRY_MS);
	try {
		return await task();
	} finally {
		await giveUpLease(db, work, holder);
	}
}
