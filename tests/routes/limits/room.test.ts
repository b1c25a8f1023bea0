import type { RequestEvent } from '@sveltejs/kit';
import { expect, test } from 'vitest';
import { RoomForForms } from '../../../src/routes/limits/room.ts';

interface Sent {
	MB: number;
	from?: string;
	host?: string;
	type?: string;
}

const FORM = 'multipart/form-data; boundary=b';

/** Sends without an end: what comes back ends it, and says with which status. */
function send(room: RoomForForms, { MB, from = '203.0.113.5', host = 'ice.example', type }: Sent) {
	const url = new URL(`http://${host}/x`);
	const headers = { 'content-type': type ?? FORM, 'content-length': String(MB * 1e6) };
	const request = new Request(url, { method: 'POST', body: 'x', headers });
	const event = { url, request, getClientAddress: () => from } as unknown as RequestEvent;
	let end = (_failed?: boolean) => {};
	const work = new Promise<Response>((done, fail) => {
		end = (failed = false) => (failed ? fail(new Error('broke off')) : done(new Response()));
	});
	let isBegun = false;
	const answer = room.within(event, () => {
		isBegun = true;
		return work;
	});
	return { answer, end: () => end(), breakOff: () => end(true), isBegun: () => isBegun };
}

const RETRY = expect.stringMatching(/^\d+$/);

async function refusedWith({ answer, isBegun }: ReturnType<typeof send>) {
	expect(isBegun()).toBe(false);
	const { status, headers } = await answer;
	expect(headers.get('retry-after')).toEqual(RETRY);
	return status;
}

test('of one address one large file is taken in at a time', async () => {
	const room = new RoomForForms();
	const first = send(room, { MB: 60 });
	expect(await refusedWith(send(room, { MB: 60 }))).toBe(429);
	first.end();
	expect((await first.answer).status).toBe(200);
	expect(send(room, { MB: 60 }).isBegun()).toBe(true);
});

test('over all, from however many addresses, no more than two of the largest are in memory', async () => {
	const room = new RoomForForms();
	const taken = [1, 2, 3, 4, 5].map((n) => send(room, { MB: 60, from: `203.0.113.${n}` }));
	expect(taken.map(({ isBegun }) => isBegun())).toEqual([true, true, false, false, false]);
	for (const late of taken.slice(2)) expect(await refusedWith(late)).toBe(503);
	expect(await refusedWith(send(room, { MB: 60, from: '127.0.0.1', host: 'localhost' }))).toBe(503);
	taken[0]?.end();
	await taken[0]?.answer;
	expect(send(room, { MB: 60, from: '203.0.113.9' }).isBegun()).toBe(true);
});

test('a transfer that breaks off gives its place back', async () => {
	const room = new RoomForForms();
	for (let turn = 0; turn < 5; turn++) {
		const sent = send(room, { MB: 60 });
		expect(sent.isBegun()).toBe(true);
		sent.breakOff();
		await expect(sent.answer).rejects.toThrow('broke off');
	}
});

test('what is typed is stored while files fill their room, and has a bound of its own', async () => {
	const room = new RoomForForms();
	for (const n of [1, 2]) send(room, { MB: 66, from: `203.0.113.${n}` });
	const typed = Array.from({ length: 20 }, () => send(room, { MB: 0.9 }));
	expect(typed.filter(({ isBegun }) => isBegun())).toHaveLength(17);
	const others = Array.from({ length: 100 }, (_, n) =>
		send(room, { MB: 0.9, from: `198.51.100.${n}` })
	);
	expect(others.filter(({ isBegun }) => isBegun())).toHaveLength(54);
	expect(await refusedWith(others.at(-1) as (typeof others)[0])).toBe(503);
});

test('what is no form is left to its handler', () => {
	const room = new RoomForForms();
	for (let turn = 0; turn < 9; turn++) {
		expect(send(room, { MB: 200, type: 'text/csv' }).isBegun()).toBe(true);
	}
});
