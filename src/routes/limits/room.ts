import type { RequestEvent } from '@sveltejs/kit';
import { askerOf } from './asker.ts';
import { isForm } from './is-form.ts';
import { refusal } from './refusal.ts';

/** How much of all forms may be in memory at once, by what they say of their length. */
interface Room {
	ofOne_B: number;
	ofAll_B: number;
}

/** What people type; over this a form holds a file. */
const TYPED_B = 1_000_000;
const TYPED: Room = { ofOne_B: 16_000_000, ofAll_B: 64_000_000 };
/** One of the largest from an address, two in all, or more of smaller ones. */
const FILES: Room = { ofOne_B: 66_000_000, ofAll_B: 132_000_000 };
/** A form is taken in within seconds, on a slow line within a minute. */
const WAIT_S = 10;

type Asked = Pick<RequestEvent, 'request' | 'url' | 'getClientAddress'>;

/**
 * Bounds what forms take of memory, as each is read whole: a place is taken by the length that a form
 * tells, before it is read, and given back once it is answered. Files have a room of their own, so
 * that large ones that come slowly keep nobody from storing what was typed.
 */
export class RoomForForms {
	readonly #typed: Places;
	readonly #files: Places;

	constructor(typed = TYPED, files = FILES) {
		this.#typed = new Places(typed);
		this.#files = new Places(files);
	}

	/** Answers by `work`, or refuses where there is no room: to come again in some seconds. */
	async within(event: Asked, work: () => Promise<Response>): Promise<Response> {
		const { request, url } = event;
		const length_B = Number(request.headers.get('content-length') ?? 0);
		if (!isForm(request.headers) || request.body === null || length_B === 0) return work();
		const { key, isHere } = askerOf(event.getClientAddress, url.hostname);
		const places = length_B > TYPED_B ? this.#files : this.#typed;
		const full = places.take(key, length_B, isHere);
		if (full !== null) return noRoom(event, full);
		try {
			return await work();
		} finally {
			places.giveBack(key, length_B);
		}
	}
}

type Full = 'ofOne' | 'ofAll';

class Places {
	readonly #room: Room;
	/** No more entries than forms under way. */
	readonly #taken = new Map<string, number>();
	#all_B = 0;

	constructor(room: Room) {
		this.#room = room;
	}

	/** On this machine only the bound of all holds. */
	take(asker: string, length_B: number, isHere: boolean): Full | null {
		const own_B = (this.#taken.get(asker) ?? 0) + length_B;
		if (this.#all_B + length_B > this.#room.ofAll_B) return 'ofAll';
		if (!isHere && own_B > this.#room.ofOne_B) return 'ofOne';
		this.#taken.set(asker, own_B);
		this.#all_B += length_B;
		return null;
	}

	giveBack(asker: string, length_B: number): void {
		const left_B = (this.#taken.get(asker) ?? 0) - length_B;
		if (left_B > 0) this.#taken.set(asker, left_B);
		else this.#taken.delete(asker);
		this.#all_B -= length_B;
	}
}

function noRoom(event: Asked, full: Full): Response {
	const headers = { 'retry-after': String(WAIT_S) };
	if (full === 'ofOne') {
		const message = `Another file from your address is still being taken in. Wait ${WAIT_S} seconds and send this one again.`;
		return refusal(event, { status: 429, title: 'Too Many Requests', message, headers });
	}
	const message = `Files of others are being taken in, and there is no room for yours at the moment. Wait ${WAIT_S} seconds and send it again.`;
	return refusal(event, { status: 503, title: 'Service Unavailable', message, headers });
}
