import { deleteDB } from 'idb';
import { forgetType } from '../type-here.ts';
import { dropDrafts } from './draft.ts';
import { setForgotten } from './forgotten.ts';
import { lakeOf } from './keepable.ts';
import {
	BUILD_CACHE,
	BUILD_SUMMARY,
	CLOCK,
	DATABASE,
	FACTS,
	PAGES_CACHE,
	type ToServiceWorker
} from './names.ts';
import { close } from './waiting.ts';

/** A worker that says nothing has nothing. */
const LONGEST_MS = 3_000;

export interface KeptLake {
	id: string;
	/** As its own page says; its id where that page is not kept. */
	name: string;
	pages: number;
	bytes: number;
	/** When the copies were made, the oldest. */
	since: Date;
}

export interface OnDevice {
	lakes: KeptLake[];
	/** Pages that are no lake's. */
	others: { pages: number; bytes: number };
	/** The app itself. */
	build: { files: number; bytes: number };
}

/** What is kept on this device for when there is no connection, and how much room it takes. */
export async function listOnDevice(): Promise<OnDevice> {
	const found: OnDevice = {
		lakes: [],
		others: { pages: 0, bytes: 0 },
		build: { files: 0, bytes: 0 }
	};
	const lakes = new Map<string, KeptLake>();
	for (const name of await caches.keys()) {
		if (name.startsWith(BUILD_CACHE)) {
			const summary = await (await caches.open(name)).match(BUILD_SUMMARY);
			const { files = 0, bytes = 0 } = ((await summary?.json()) ?? {}) as Partial<
				OnDevice['build']
			>;
			found.build.files += files;
			found.build.bytes += bytes;
		} else if (name === PAGES_CACHE) {
			for (const page of await factsOf(name)) count(page, lakes, found.others);
		}
	}
	return { ...found, lakes: [...lakes.values()].toSorted((a, b) => a.name.localeCompare(b.name)) };
}

/** Why nothing is kept on this device; `null` where it is. */
export function whyNothing(): string | null {
	if (!window.isSecureContext) {
		return `Pages are kept for the lake only where the address begins with https, or is this machine itself (localhost): browsers refuse it to ${location.origin}. Whoever runs this Frostledger can put it behind https. All else works here as it does there.`;
	}
	if (!('serviceWorker' in navigator) || !('caches' in window)) {
		return 'This browser keeps no pages, or not in a private window. All else works as ever.';
	}
	return null;
}

/** Lets go of the copies; what waits to be sent stays. */
export async function forgetPages(): Promise<void> {
	await caches.delete(PAGES_CACHE);
	await tellWorker('forgetPages');
}

/** Lets go of everything on this device, what was not sent included. */
export async function forgetAll(): Promise<void> {
	setForgotten();
	await tellWorker('forgetAll');
	if ('serviceWorker' in navigator) {
		for (const each of await navigator.serviceWorker.getRegistrations()) await each.unregister();
	}
	if ('caches' in window) {
		for (const name of await caches.keys()) await caches.delete(name);
	}
	close();
	await deleteDB(DATABASE);
	dropDrafts();
	forgetType();
}

/** What it is in the middle of fetching it would keep after all. */
async function tellWorker(kind: 'forgetPages' | 'forgetAll'): Promise<void> {
	const worker = 'serviceWorker' in navigator ? navigator.serviceWorker.controller : null;
	if (!worker) return;
	const { port1, port2 } = new MessageChannel();
	const isDone = new Promise((done) => port1.addEventListener('message', done, { once: true }));
	port1.start();
	worker.postMessage({ kind } satisfies ToServiceWorker, [port2]);
	await Promise.race([isDone, new Promise((done) => setTimeout(done, LONGEST_MS))]);
}

interface Facts {
	url: URL;
	bytes: number;
	madeAt: Date;
	title: string;
}

async function factsOf(name: string): Promise<Facts[]> {
	const cache = await caches.open(name);
	const all: Facts[] = [];
	for (const request of await cache.keys()) {
		if (new URL(request.url).pathname === CLOCK) continue;
		const kept = await cache.match(request, { ignoreVary: true });
		const headers = kept?.headers;
		// Bodies that nobody reads hold up the browser.
		await kept?.body?.cancel();
		all.push({
			url: new URL(request.url),
			bytes: Number(headers?.get(FACTS.bytes) ?? 0),
			madeAt: new Date(Number(headers?.get(FACTS.madeAt) ?? 0)),
			title: decodeURIComponent(headers?.get(FACTS.title) ?? '')
		});
	}
	return all;
}

function count(
	{ url, bytes, madeAt, title }: Facts,
	lakes: Map<string, KeptLake>,
	others: OnDevice['others']
): void {
	const id = lakeOf(url);
	if (id === null) {
		others.pages++;
		others.bytes += bytes;
		return;
	}
	const known = lakes.get(id) ?? { id, name: id, pages: 0, bytes: 0, since: madeAt };
	const isItsOwn = url.pathname === `/lakes/${id}` && title !== '';
	lakes.set(id, {
		id,
		name: isItsOwn ? title : known.name,
		pages: known.pages + 1,
		bytes: known.bytes + bytes,
		since: madeAt < known.since ? madeAt : known.since
	});
}
