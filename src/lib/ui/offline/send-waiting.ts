import { withSite } from '../site-link.ts';
import { dropWaiting, listWaiting, putWaiting, type Waiting } from './waiting.ts';
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
	for (const entry of await listWaiting()) {
		if (entry.state !== 'waiting') continue;
		const answer = await send(entry);
		if (answer.kind === 'stored') {
			await dropWaiting(entry.id);
			sent++;
		} else if (answer.kind === 'later') {
			if (answer.reason !== entry.reason) await putWaiting({ ...entry, reason: answer.reason });
			return sent;
		} else if (answer.kind === 'conflict') {
			const { theirs } = answer;
			await putWaiting({ ...entry, state: 'conflict', reason: null, theirs });
		} else await putWaiting({ ...entry, state: 'refused', reason: answer.reason });
	}
	return sent;
}

/** Sends one, with where it was taken. */
async function send(entry: Waiting): Promise<SendAnswer> {
	const { id, site, reading, joins, changes, position } = entry;
	const list = `/api/v1/lakes/${encodeURIComponent(entry.lake.id)}/readings`;
	const stored = changes
		? await ask('PATCH', `${list}/${changes.readingId}`, { ...reading, version: changes.version })
		: await ask('POST', withSite(list, site), {
				...reading,
				clientId: id,
				...(joins === null ? {} : { joins })
			});
	if (stored.kind !== 'stored' || position === null || stored.id === null) return stored;
	const placed = await ask('PUT', `${list}/${stored.id}/position`, position);
	// The reading is there: that its place is refused keeps nothing here.
	return placed.kind === 'later' ? placed : stored;
}

async function ask(method: string, address: string, body: object): Promise<SendAnswer> {
	try {
		const response = await fetch(address, {
			method,
			body: JSON.stringify(body),
			headers: { 'content-type': 'application/json', accept: 'application/json' },
			cache: 'no-store',
			redirect: 'manual'
		});
		return await answerOf(response);
	} catch {
		return { kind: 'later', reason: null };
	}
}
