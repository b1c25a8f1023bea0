import { afterAll, beforeAll, expect, test } from 'vitest';
import { startApp, type RunningApp } from '../support/app.ts';
import { changingCalls } from '../support/changing-calls.ts';

let app: RunningApp;

beforeAll(async () => {
	app = await startApp({ FROSTLEDGER_REFRESH: 'off' });
});
afterAll(() => app.stop());

const FORM = 'application/x-www-form-urlencoded';
/** What a page elsewhere can send without being asked first, and what it cannot. */
const BODIES: Record<string, string> = {
	[FORM]: 'id=pinder-lake&name=Taken&measure=imperial',
	'multipart/form-data; boundary=b':
		'--b\r\nContent-Disposition: form-data; name="id"\r\n\r\nx\r\n--b--',
	'text/plain': '{"name":"Taken"}',
	'application/json': '{"name":"Taken"}'
};

async function send(address: string, method: string, headers: Record<string, string>) {
	const body = BODIES[headers['content-type'] ?? ''] ?? null;
	const answer = await fetch(new URL(address, app.url), {
		method,
		headers,
		body,
		redirect: 'manual'
	});
	return { status: answer.status, text: await answer.text() };
}

/** All that is stored of the invented lake, as its export and its settings tell it. */
async function stored(): Promise<string> {
	const paths = [
		'',
		'/readings',
		'/loads',
		'/sites',
		'/sources',
		'/telling',
		'/weak-spots',
		'/trip'
	];
	const lake = '/api/v1/lakes/pinder-lake';
	const asked = [
		...paths.map((path) => lake + path),
		'/api/v1/lakes',
		'/api/v1/sources',
		'/api/v1/backups'
	];
	const answers = await Promise.all(
		asked.map(async (path) => (await fetch(new URL(path, app.url))).text())
	);
	return answers.join('\n');
}

test('there are many calls that change something', () => {
	expect(changingCalls.length).toBeGreaterThan(150);
	expect(changingCalls.filter(({ address }) => address.includes('?/')).length).toBeGreaterThan(50);
});

test('a page elsewhere changes nothing at any address, by any method and any kind of body', async () => {
	const before = await stored();
	const taken: string[] = [];
	for (const { method, address } of changingCalls) {
		for (const type of Object.keys(BODIES)) {
			const from = { 'content-type': type, origin: 'https://elsewhere.example' };
			const { status, text } = await send(address, method, from);
			if (status !== 403 || !text.includes('this site only')) {
				taken.push(`${method} ${address} ${type}: ${status}`);
			}
		}
	}
	expect(taken).toEqual([]);
	expect(await stored()).toBe(before);
}, 240_000);

test.each<Record<string, string>>([
	{ origin: 'null' },
	{ origin: 'https://localhost' },
	{ 'sec-fetch-site': 'cross-site', 'content-type': 'application/json' },
	{ 'sec-fetch-site': 'same-site', 'content-type': 'application/json' },
	{ referer: 'https://elsewhere.example/', 'content-type': 'text/csv' },
	{ 'content-type': FORM }
])(
	'no form of any page is taken with %o',
	async (headers) => {
		const taken: string[] = [];
		for (const { method, address } of changingCalls) {
			const { status } = await send(address, method, headers);
			if (status !== 403) taken.push(`${method} ${address}: ${status}`);
		}
		expect(taken).toEqual([]);
	},
	120_000
);

test('no answer lets a page elsewhere read it', async () => {
	for (const path of [
		'/',
		'/api/v1/lakes',
		'/lakes/pinder-lake',
		'/lakes/pinder-lake/__data.json'
	]) {
		const { headers } = await fetch(new URL(path, app.url), {
			headers: { origin: 'https://elsewhere.example' }
		});
		expect(headers.get('access-control-allow-origin'), path).toBeNull();
		expect(headers.get('cross-origin-resource-policy'), path).toBe('same-origin');
	}
	const asked = await fetch(new URL('/api/v1/lakes', app.url), {
		method: 'OPTIONS',
		headers: { origin: 'https://elsewhere.example', 'access-control-request-method': 'DELETE' }
	});
	expect(asked.headers.get('access-control-allow-methods')).toBeNull();
});

test('one address is held to a pace, and another and this machine go on', async () => {
	const rename = (from?: string) =>
		fetch(new URL('/api/v1/lakes/nowhere', app.url), {
			method: 'DELETE',
			headers: from === undefined ? {} : { 'x-forwarded-for': from }
		});
	const answers = await Promise.all(
		Array.from({ length: 200 }, async () => {
			const { status, headers } = await rename('203.0.113.9');
			return { status, retryAfter: headers.get('retry-after') };
		})
	);
	expect(answers.filter(({ status }) => status === 404).length).toBeGreaterThanOrEqual(120);
	// One of these, as another is granted every second.
	const refused = answers.find(({ status }) => status === 429);
	expect(Number(refused?.retryAfter)).toBeGreaterThan(0);
	expect((await rename('203.0.113.10')).status).toBe(404);
	expect((await rename()).status).toBe(404);
});

test('an address or headers that never end are refused, and the app goes on', async () => {
	const long = await fetch(new URL(`/lakes/${'a'.repeat(40_000)}`, app.url));
	expect(long.status).toBe(431);
	const headers = { cookie: `x=${'a'.repeat(40_000)}` };
	expect((await fetch(app.url, { headers })).status).toBe(431);
	expect((await fetch(app.url)).status).toBe(200);
});
