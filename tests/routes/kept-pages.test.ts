import { setTimeout as wait } from 'node:timers/promises';
import { brotliDecompressSync, gunzipSync } from 'node:zlib';
import { expect, test } from 'vitest';
import { ON_THIS_MACHINE, type Viewer } from '../../src/lib/server/services/access/viewer.ts';
import { updateLake } from '../../src/lib/server/services/lakes.ts';
import { keptPage } from '../../src/routes/kept-pages.ts';
import { VIEWERS } from '../support/access.ts';
import { freshContext, inventedLake } from '../support/fresh-context.ts';

/** A page that counts how often it is made. */
async function page({ mayBeKept = true, status = 200, takes_ms = 0 } = {}) {
	const context = await freshContext();
	const { id } = await inventedLake(context);
	let made = 0;
	const ask = async ({
		path = '',
		units,
		accept = 'gzip',
		method = 'GET',
		isDataRequest = false,
		viewer = ON_THIS_MACHINE
	}: Asked = {}) => {
		const url = new URL(`http://localhost/lakes/${id}${path}`);
		const locals: { context: typeof context; viewer: Viewer; mayBeKept?: boolean } = {
			context,
			viewer
		};
		const request = new Request(url, { method, headers: { 'accept-encoding': accept } });
		const cookies = { get: () => units };
		const event = { url, request, locals, params: { lake: id }, cookies, isDataRequest };
		return keptPage(event as never, async () => {
			const turn = ++made;
			await wait(takes_ms);
			locals.mayBeKept = mayBeKept;
			return new Response(`<p>made ${turn}</p>`, { status, headers: { etag: `"${turn}"` } });
		});
	};
	const text = async (asked: Asked = {}) => {
		const response = await ask(asked);
		const bytes = Buffer.from(await response.arrayBuffer());
		const coding = response.headers.get('content-encoding');
		if (coding === 'br') return brotliDecompressSync(bytes).toString();
		return (coding === 'gzip' ? gunzipSync(bytes) : bytes).toString();
	};
	return { context, id, ask, text };
}

interface Asked {
	path?: string;
	units?: string;
	accept?: string;
	method?: string;
	isDataRequest?: boolean;
	viewer?: Viewer;
}

test('a page that may be kept is made once, and comes zipped to whoever takes that', async () => {
	const { ask, text } = await page();
	expect(await text()).toBe('<p>made 1</p>');
	expect(await text()).toBe('<p>made 1</p>');
	const plain = await ask({ accept: 'identity' });
	expect(plain.headers.get('content-encoding')).toBeNull();
	expect(plain.headers.get('etag')).toBe('"1"');
	expect(plain.headers.get('vary')).toBe('Accept-Encoding');
	expect(await plain.text()).toBe('<p>made 1</p>');
});

test('whoever takes Brotli is given it, from a copy of its own', async () => {
	const { ask, text } = await page();
	const accept = 'gzip, deflate, br, zstd';
	const answer = await ask({ accept });
	expect(answer.headers.get('content-encoding')).toBe('br');
	expect(answer.headers.get('vary')).toBe('Accept-Encoding');
	expect(await text({ accept })).toBe('<p>made 1</p>');
	expect(await text({ accept: 'gzip' })).toBe('<p>made 2</p>');
	expect(await text({ accept })).toBe('<p>made 1</p>');
});

test('another address or other units are another page', async () => {
	const { text } = await page();
	await text();
	expect(await text({ path: '?asOf=2026-12-01' })).toBe('<p>made 2</p>');
	expect(await text({ units: 'imperial' })).toBe('<p>made 3</p>');
});

test('nobody is given the page of another who may see something else', async () => {
	const { text } = await page();
	const { owner, helper, guest, guestWithPlaces } = VIEWERS;
	const all = [owner, guest, helper, guestWithPlaces, ON_THIS_MACHINE];
	const first = [];
	for (const viewer of all) first.push(await text({ viewer }));
	expect(first).toEqual(all.map((_, index) => `<p>made ${index + 1}</p>`));
	for (const viewer of all.toReversed())
		expect(await text({ viewer })).toBe(first[all.indexOf(viewer)]);
	const another: Viewer = { ...helper, id: 'p-2', name: 'Another' };
	expect(await text({ viewer: another })).toBe(first[all.indexOf(helper)]);
});

test('who asks while it is being made is given the same, who sees something else is not', async () => {
	const { text } = await page({ takes_ms: 50 });
	const { owner, guest } = VIEWERS;
	const all = await Promise.all([owner, owner, guest, owner].map((viewer) => text({ viewer })));
	expect(new Set([all[0], all[1], all[3]]).size).toBe(1);
	expect(all[2]).not.toBe(all[0]);
});

test('who asks after a change is not given what was begun before it', async () => {
	const { context, id, text } = await page({ takes_ms: 50 });
	const before = text();
	await wait(20);
	await updateLake(context, id, { name: 'Renamed' });
	const after = text();
	expect(await before).toBe('<p>made 1</p>');
	expect(await after).toBe('<p>made 2</p>');
	expect(await text()).toBe('<p>made 2</p>');
});

test('what may not be kept is made for each who asks at once', async () => {
	const { text } = await page({ mayBeKept: false, takes_ms: 50 });
	const all = await Promise.all([text(), text(), text()]);
	expect(new Set(all).size).toBe(3);
});

test('after a change of the lake it is made anew', async () => {
	const { context, id, text } = await page();
	await text();
	await updateLake(context, id, { name: 'Renamed' });
	expect(await text()).toBe('<p>made 2</p>');
});

test.each([
	['a page that says nothing', { mayBeKept: false }, {}],
	['an error', { status: 404 }, {}],
	['data for a page that is open', {}, { isDataRequest: true }],
	['what is sent', {}, { method: 'POST' }]
])('%s is not kept', async (_, made, asked) => {
	const { text } = await page(made);
	await text(asked);
	expect(await text(asked)).toContain('made 2');
});
