import { openDB, type DBSchema, type IDBPDatabase } from 'idb';
import type { Reading } from '#lib/model/reading.ts';
import type { FormValues } from '../forms/form-input.ts';
import { CHANNEL, DATABASE } from './names.ts';
import { NOBODY, type Person } from './person.ts';

/** A reading, or a change of one, that is on this device and not known to be on the server. */
export interface Waiting {
	/** Made here, and the same each time it is sent. */
	id: string;
	lake: { id: string; name: string };
	site: string;
	reading: Omit<Reading, 'id'>;
	/** As it was typed, to be mended. */
	typed: FormValues;
	/** The hole of the same visit that it goes with, by the id it was given here. */
	joins: string | null;
	position: { latitude: number; longitude: number } | null;
	/** The stored reading that it changes, and the version it was made to; `null` for a new one. */
	changes: { readingId: string; version: number } | null;
	/** Who typed it: it is sent in no other name, unless somebody puts theirs to it. */
	by: Person;
	/** By the server's last word, who typed it is not signed in here, or never will be again. */
	held: 'away' | 'gone' | null;
	/** The form it was typed into. */
	form: 'hole' | 'reading';
	loggedAt_ms: number;
	/** Until then its form is sending it, and nobody else need; 0 where none is. */
	underWayUntil_ms: number;
	/** `waiting`: to be sent. `refused` and `conflict`: somebody has to choose first. */
	state: 'waiting' | 'refused' | 'conflict';
	/** Why it is still here, in a sentence. */
	reason: string | null;
	/** What somebody else made of the same reading, and where mine was set aside on the server. */
	theirs: { reading: Reading; version: number; aside: number | null } | null;
}

interface OnDevice extends DBSchema {
	waiting: { key: string; value: Waiting; indexes: { lake: string } };
}

let opened: Promise<IDBPDatabase<OnDevice>> | null = null;

function database(): Promise<IDBPDatabase<OnDevice>> {
	opened ??= openDB<OnDevice>(DATABASE, 1, {
		upgrade(db) {
			const store = db.createObjectStore('waiting', { keyPath: 'id' });
			store.createIndex('lake', 'lake.id');
		},
		// So that all can be forgotten while other pages are open.
		blocking: () => close(),
		terminated: () => (opened = null)
	}).catch((cause: unknown) => {
		opened = null;
		throw cause;
	});
	return opened;
}

/** Lets others delete the database. */
export function close(): void {
	void opened?.then((db) => db.close());
	opened = null;
}

/** Kept from the moment this is done, whatever becomes of the page. */
export async function putWaiting(entry: Waiting): Promise<void> {
	const db = await database();
	const tx = db.transaction('waiting', 'readwrite', { durability: 'strict' });
	await Promise.all([tx.store.put(entry), tx.done]);
	tell();
}

/** Changes what is still here; what was let go of meanwhile is not brought back. */
export async function changeWaiting(id: string, change: Partial<Waiting>): Promise<void> {
	const db = await database();
	const tx = db.transaction('waiting', 'readwrite', { durability: 'strict' });
	const entry = await tx.store.get(id);
	if (entry) await tx.store.put({ ...entry, ...change });
	await tx.done;
	tell();
}

export async function dropWaiting(id: string): Promise<void> {
	await (await database()).delete('waiting', id);
	tell();
}

export async function getWaiting(id: string): Promise<Waiting | null> {
	const entry = await (await database()).get('waiting', id);
	return entry ? whole(entry) : null;
}

/** In the order they were logged; of one lake, or all. */
export async function listWaiting(lakeId?: string): Promise<Waiting[]> {
	const db = await database();
	const all =
		lakeId === undefined
			? await db.getAll('waiting')
			: await db.getAllFromIndex('waiting', 'lake', lakeId);
	return all.map(whole).toSorted((a, b) => a.loggedAt_ms - b.loggedAt_ms);
}

/** What was put here before it was noted who typed it. */
function whole(entry: Waiting): Waiting {
	const before: Partial<Waiting> = { by: NOBODY, held: null, form: 'hole', underWayUntil_ms: 0 };
	return { ...before, ...entry };
}

/** Calls back when something of what waits has changed, here or in another page. */
export function onWaitingChanged(listen: () => void): () => void {
	const channel = new BroadcastChannel(CHANNEL);
	channel.addEventListener('message', listen);
	return () => channel.close();
}

function tell(): void {
	const channel = new BroadcastChannel(CHANNEL);
	channel.postMessage('changed');
	channel.close();
}

/** An id that no other device makes, where the page has no right to ask the browser for one too. */
export function newClientId(): string {
	if ('randomUUID' in crypto) return crypto.randomUUID();
	const bytes = (crypto as Crypto).getRandomValues(new Uint8Array(16));
	bytes[6] = ((bytes[6] ?? 0) & 0x0f) | 0x40;
	bytes[8] = ((bytes[8] ?? 0) & 0x3f) | 0x80;
	const hex = Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');
	return hex.replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, '$1-$2-$3-$4-$5');
}
