import { CLOCK, PAGES_CACHE } from './names.ts';
import type { Clocks } from './notice.ts';

/**
 * The latest that this device's clock and the server's were seen to tell. Kept among the pages, whose
 * age it bounds, and forgotten with them. Pages that are open note it as the service worker does.
 */
export async function latestSeen(): Promise<Clocks> {
	const known = await read();
	const seen = { ...known, device_ms: Math.max(known.device_ms, Date.now()) };
	if (seen.device_ms > known.device_ms) await write(seen);
	return seen;
}

/**
 * The server has answered with what it made at an instant, or with what tells none: whatever this
 * device's clock said before, ahead as it may have been, counts no more.
 */
export async function heardServer(made_ms: number | null): Promise<void> {
	const { server_ms } = await read();
	await write({ device_ms: Date.now(), server_ms: made_ms ?? server_ms });
}

async function read(): Promise<Clocks> {
	const kept = await caches.match(CLOCK, { cacheName: PAGES_CACHE });
	const { device_ms, server_ms } = ((await kept?.json()) ?? {}) as Partial<Clocks>;
	return { device_ms: device_ms ?? 0, server_ms: server_ms ?? 0 };
}

async function write(clocks: Clocks): Promise<void> {
	// Opening the cache would make it anew where all was forgotten.
	if (!(await caches.has(PAGES_CACHE))) return;
	await (await caches.open(PAGES_CACHE)).put(CLOCK, Response.json(clocks));
}
