import { randomBytes } from 'node:crypto';
import type { Context } from '../../context.ts';
import { hostsOfCalls } from './hosts.ts';

/** A key that was typed while a source is set up, until the source is stored. */
interface Held {
	key: string;
	/** It goes nowhere else. */
	hosts: ReadonlySet<string>;
	until: Date;
}

interface Addressed {
	address: string;
	first?: readonly { address: string }[] | undefined;
}

/** Of each database, by tickets that can't be guessed. In memory only: a restart forgets them. */
const held = new WeakMap<Context['db'], Map<string, Held>>();

const HELD_MS = 2 * 3_600_000;
const MOST = 100;

/** Keeps a key from one try to the next, and gives a ticket that is shown in its place. */
export function holdKey(ctx: Context, key: string, call: Addressed): string {
	const all = held.get(ctx.db) ?? new Map<string, Held>();
	held.set(ctx.db, all);
	const now = ctx.now();
	for (const [ticket, { until }] of all) if (until <= now) all.delete(ticket);
	const [oldest] = all.keys();
	if (all.size >= MOST && oldest !== undefined) all.delete(oldest);
	const ticket = randomBytes(18).toString('base64url');
	const hosts = new Set(hostsOfCalls([call]));
	all.set(ticket, { key, hosts, until: new Date(now.getTime() + HELD_MS) });
	return ticket;
}

/** The key of a ticket, where the address is on the hosts that it was typed for. */
export function heldKey(ctx: Context, ticket: string, call: Addressed): string | null {
	const found = held.get(ctx.db)?.get(ticket);
	if (!found || found.until <= ctx.now()) return null;
	return hostsOfCalls([call]).every((host) => found.hosts.has(host)) ? found.key : null;
}

export function forgetHeldKey(ctx: Context, ticket: string): void {
	held.get(ctx.db)?.delete(ticket);
}
