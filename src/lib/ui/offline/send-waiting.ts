import { withSite } from '../site-link.ts';
import { LOGGED_BY } from './names.ts';
import type { Person } from './person.ts';
import { changeWaiting, dropWaiting, getWaiting, listWaiting, type Waiting } from './waiting.ts';
import { answerOf, type SendAnswer } from './send-answer.ts';

const LOCK = 'frostledger-send';

/**
 * Sends what waits, the first logged first, until there is nothing left or no connection. Never two at a
 * time where the browser can tell; and where it cannot, what is sent twice is stored once.
 * @returns how many were sent
 */
export async function sendWaiting(): Promise<number> {
	if (!('locks' in navigator)) return sendAll();
	return navigator.locks.request(LOCK, { ifAvailable: true }, (lock) => (lock ? sendAll() : 0));
}

async function sendAll(): Promise<number> {
	let sent = 0;
	/** Those who are not signed in here now: what else is theirs need not be tried. */
	const absent = new Set<string>();
	for (const { id } of await listWaiting()) {
		// As it is now: somebody may have mended it, or let go of it, meanwhile.
		const entry = await getWaiting(id);
		if (entry?.state !== 'waiting' || absent.has(entry.by.id)) continue;
		if (entry.underWayUntil_ms > Date.now()) continue;
		const answer = await send(entry);
		if (answer.kind === 'later' && answer.reason === entry.reason) return sent;
		if (answer.kind === 'stored') sent++;
		if (answer.kind === 'notTheirs') absent.add(entry.by.id);
		await note(entry, answer);
		if (answer.kind === 'later') return sent;
	}
	return sent;
}

async function note({ id, by, held }: Waiting, answer: SendAnswer): Promise<void> {
	switch (answer.kind) {
		case 'stored':
			return dropWaiting(id);
		case 'later':
			return changeWaiting(id, { reason: answer.reason });
		case 'conflict':
			return changeWaiting(id, {
				state: 'conflict',
				reason: null,
				held: null,
				theirs: answer.theirs
			});
		case 'refused':
			return changeWaiting(id, { state: 'refused', held: null, reason: answer.reason });
		case 'notTheirs': {
			const now = answer.isGone ? 'gone' : 'away';
			if (now === held) return;
			for (const each of await listWaiting())
				if (each.by.id === by.id) await changeWaiting(each.id, { held: now, reason: null });
		}
	}
}

/** Sends what another has typed in the name of who is here now, once they have said so. */
export async function sendAs(id: string, by: Person): Promise<number> {
	await changeWaiting(id, { by, held: null });
	return sendWaiting();
}

/** Sends one, with where it was taken. */
async function send(entry: Waiting): Promise<SendAnswer> {
	const { id, by, site, reading, joins, changes, position } = entry;
	const list = `/api/v1/lakes/${encodeURIComponent(entry.lake.id)}/readings`;
	const stored = changes
		? await ask(by, 'PATCH', `${list}/${changes.readingId}`, {
				...reading,
				version: changes.version
			})
		: await ask(by, 'POST', withSite(list, site), {
				...reading,
				clientId: id,
				...(joins === null ? {} : { joins })
			});
	if (stored.kind !== 'stored' || position === null || stored.id === null) return stored;
	const placed = await ask(by, 'PUT', `${list}/${stored.id}/position`, position);
	// The reading is there: that its place is refused keeps nothing here.
	return placed.kind === 'later' || placed.kind === 'notTheirs' ? placed : stored;
}

async function ask(by: Person, method: string, address: string, body: object): Promise<SendAnswer> {
	try {
		const response = await fetch(address, {
			method,
			body: JSON.stringify(body),
			headers: {
				'content-type': 'application/json',
				accept: 'application/json',
				[LOGGED_BY]: by.id
			},
			cache: 'no-store',
			redirect: 'manual'
		});
		return await answerOf(response);
	} catch {
		return { kind: 'later', reason: null };
	}
}
