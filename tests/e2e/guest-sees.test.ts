import { afterAll, beforeAll, expect, test } from 'vitest';
import { RULES } from '../../src/routes/access/may.ts';
import { PASSPHRASE } from '../support/access.ts';
import { startApp, type RunningApp } from '../support/app.ts';
import { startingAt } from '../support/clock.ts';
import { winterCsv } from '../support/winter-csv.ts';

/** Digits that occur nowhere else. */
const LAKE = { latitude: 47.48151623, longitude: -38.24815162 };
const SPOT = { latitude: 47.49342211, longitude: -38.25934221 };
const HOLE = { latitude: 47.49517283, longitude: -38.25517283 };
/** To four places with what stands before them, or seven of them alone: no number of an estimate has those. */
const EXACT =
	/(47\.(4815|4934|4951)|38\.(2481|2593|2551))|4815162|2481516|4934221|2593422|4951728|2551728/;
const LAKE_PATH = '/api/v1/lakes/pond-of-the-tests';

let app: RunningApp;
const cookies: Record<'owner' | 'guest' | 'withPlaces', string> = {
	owner: '',
	guest: '',
	withPlaces: ''
};

/** Sends a form as a page of the app does. */
function post(path: string, fields: Record<string, string>, cookie = ''): Promise<Response> {
	const headers = { origin: app.url.replace(/\/$/, ''), accept: 'text/html', cookie };
	const body = new URLSearchParams(fields);
	return fetch(new URL(path, app.url), { method: 'POST', headers, body, redirect: 'manual' });
}

function get(path: string, cookie: string, accept = 'text/html'): Promise<Response> {
	return fetch(new URL(path, app.url), { headers: { cookie, accept }, redirect: 'manual' });
}

async function send(method: string, path: string, body: unknown): Promise<unknown> {
	const isText = typeof body === 'string';
	const response = await fetch(new URL(path, app.url), {
		method,
		body: isText ? body : JSON.stringify(body),
		headers: { cookie: cookies.owner, 'content-type': isText ? 'text/csv' : 'application/json' }
	});
	expect(response.ok, `${method} ${path}: ${await response.clone().text()}`).toBe(true);
	return response.json();
}

const sessionOf = (response: Response) =>
	/frostledger-session=[^;]+/.exec(response.headers.get('set-cookie') ?? '')?.[0] ?? '';

async function guestCookie(fields: Record<string, string>): Promise<string> {
	const wish = { name: 'Invented guest', lake: 'pond-of-the-tests', ...fields };
	const page = await (await post('/people?/guest', wish, cookies.owner)).text();
	const path = /\/look\/[\w-]{43}/.exec(page)?.[0] ?? '';
	return sessionOf(await get(path, ''));
}

beforeAll(async () => {
	app = await startApp({
		...startingAt('2027-02-05T12:00:00Z'),
		FROSTLEDGER_PASSPHRASE: PASSPHRASE,
		FROSTLEDGER_REFRESH: 'off'
	});
	cookies.owner = sessionOf(await post('/sign-in', { passphrase: PASSPHRASE }));
	await send('POST', '/api/v1/lakes', { name: 'Pond of the tests', water: 'lake', ...LAKE });
	await send('PUT', `${LAKE_PATH}/winters/2026-27`, { freezeUpOn: '2026-12-01' });
	await send('POST', `${LAKE_PATH}/weather`, winterCsv('2026-12-01', 60));
	const reading = { on: '2027-01-10', kind: 'measured', holes: [{ total_m: 0.3 }], place: 'Reef' };
	const { ids } = (await send('POST', `${LAKE_PATH}/readings`, reading)) as { ids: string[] };
	await send('PUT', `${LAKE_PATH}/readings/${ids[0]}/position`, HOLE);
	const spot = { name: 'Reef', kind: 'pressureRidge', ...SPOT };
	const { id } = (await send('POST', `${LAKE_PATH}/weak-spots`, spot)) as { id: string };
	const points = [{ spot: id }, { name: 'Out there', ...SPOT }];
	await send('POST', `${LAKE_PATH}/routes`, { name: 'Across', points });
	cookies.guest = await guestCookie({});
	cookies.withPlaces = await guestCookie({ seesPlaces: 'yes' });
}, 120_000);
afterAll(() => app.stop());

const GUEST_GETS = Object.entries(RULES).flatMap(([route, rules]) =>
	route.includes('[lake]') && rules.GET === 'guest' && !/\[(id|winter|site)\]/.test(route)
		? [route.replace('[lake]', 'pond-of-the-tests')]
		: []
);

test('the owner is shown positions, so that this test can fail', async () => {
	const shown = [LAKE_PATH, `${LAKE_PATH}/weak-spots`, '/lakes/pond-of-the-tests/weak-spots'];
	for (const path of shown)
		expect(await (await get(path, cookies.owner)).text(), path).toMatch(EXACT);
});

test.each(GUEST_GETS)('a guest is shown no exact position by %s', async (path) => {
	for (const asked of path.startsWith('/api/') ? [path] : [path, `${path}/__data.json`]) {
		const response = await get(asked, cookies.guest);
		const isPlain = asked.endsWith('.json/__data.json') || asked.endsWith('.csv/__data.json');
		if (!isPlain) expect(response.status, asked).toBe(200);
		expect(await response.text(), asked).not.toMatch(EXACT);
	}
});

test('one whose link allows it is shown them', async () => {
	for (const path of [LAKE_PATH, `${LAKE_PATH}/weak-spots`, `${LAKE_PATH}/places.gpx`])
		expect(await (await get(path, cookies.withPlaces)).text(), path).toMatch(EXACT);
});

test('a guest is refused GPX, routes and weak spots of the API, and any other lake', async () => {
	for (const path of ['weak-spots', 'routes', 'places.gpx', 'winters.zip', 'trip'])
		expect((await get(`${LAKE_PATH}/${path}`, cookies.guest)).status, path).toBe(403);
	expect((await get('/lakes/pinder-lake', cookies.guest)).status).toBe(404);
	expect((await get('/api/v1/lakes/pinder-lake', cookies.guest)).status).toBe(404);
	const home = await get('/', cookies.guest);
	expect([home.status, home.headers.get('location')]).toEqual([303, '/lakes/pond-of-the-tests']);
});

test('the page of the owner and that of a guest are kept apart', async () => {
	const path = '/lakes/pond-of-the-tests';
	const pages = [];
	for (const who of ['owner', 'guest', 'owner', 'guest'] as const)
		pages.push(await (await get(path, cookies[who])).text());
	expect(pages[0]).toContain(`${path}/edit`);
	expect(pages[1]).not.toContain(`${path}/edit`);
	expect(pages[1]).not.toContain('/at-the-hole');
	expect(pages.slice(2)).toEqual(pages.slice(0, 2));
});
