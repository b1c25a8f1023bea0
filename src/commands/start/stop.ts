import type { Server } from 'node:http';
import { setTimeout as wait } from 'node:timers/promises';
import { logEvent } from '#lib/server/services/log.ts';

/** How long open requests may take to finish once a stop is asked for. */
const REQUESTS_MS = 8_000;
/** How long the schedule and the database may take after that. */
const REST_MS = 5_000;

/**
 * Takes no more requests, lets those under way finish, then stops the schedule and closes the
 * database, and ends the process: with 1 when it had to be cut short.
 */
export async function stopInOrder(server: Server, signal: string): Promise<never> {
	logEvent('stopping', { signal });
	const areAnswered = await withinTime(closed(server), REQUESTS_MS);
	if (!areAnswered) server.closeAllConnections();
	const isStopped = await withinTime(shutDown(), REST_MS);
	logEvent('stopped', { areAnswered, isStopped });
	process.exit(areAnswered && isStopped ? 0 : 1);
}

function closed(server: Server): Promise<unknown> {
	return new Promise((done) => {
		server.close(done);
		server.closeIdleConnections();
	});
}

/** What the app has set down for its end; unlike `emit` this waits for it. */
function shutDown(): Promise<unknown> {
	const steps = process.listeners('sveltekit:shutdown' as 'exit') as (() => unknown)[];
	return Promise.allSettled(steps.map(async (step) => step()));
}

async function withinTime(work: Promise<unknown>, limit_ms: number): Promise<boolean> {
	const timer = new AbortController();
	const late = wait(limit_ms, false, { signal: timer.signal }).catch(() => false);
	const isDone = await Promise.race([work.then(() => true), late]);
	timer.abort();
	return isDone;
}
