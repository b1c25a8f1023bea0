import { expect, test } from 'vitest';
import { apiOf } from '../../support/api.ts';
import { fetchFeed } from '../../support/feed-calls.ts';
import { freshContext, inventedLake } from '../../support/fresh-context.ts';

const AT = '/api/v1/lakes/test-lake/telling';

async function lake(changes: { address?: string } = {}) {
	const ctx = { ...(await freshContext()), ...changes };
	await inventedLake(ctx);
	return { ctx, api: apiOf(ctx) };
}

test('all ways are off at first, and what is told can be chosen', async () => {
	const { api } = await lake();
	const before = await (await api('GET', AT)).json();
	expect(before).toEqual({
		lake: 'test-lake',
		sites: ['main'],
		loads: ['on-foot'],
		readingAfter_d: 7,
		units: { measure: 'metric', mass: 'kg' },
		calendar: null,
		changes: null,
		webhook: null
	});
	const changed = await api('PATCH', AT, {
		body: { loads: ['car', 'on-foot'], readingAfter_d: 10 }
	});
	expect(await changed.json()).toMatchObject({ loads: ['on-foot', 'car'], readingAfter_d: 10 });
	const kept = await api('PATCH', AT, { body: {} });
	expect(await kept.json()).toMatchObject({ loads: ['on-foot', 'car'], readingAfter_d: 10 });
});

test.each([
	['a load that is none', { loads: ['tank'] }, 'loads.0'],
	['a site that is none', { sites: ['main', 'moon'] }, 'sites.1'],
	['no site at all', { sites: [] }, 'sites'],
	['a reading due too soon', { readingAfter_d: 1 }, 'readingAfter_d'],
	['a field of no meaning', { colour: 'blue' }, '']
])('%s is refused with its field', async (_, body, field) => {
	const { api } = await lake();
	const response = await api('PATCH', AT, { body });
	expect(response.status).toBe(400);
	const { issues } = (await response.json()) as { issues: { field: string }[] };
	expect(issues.map((issue) => issue.field)).toEqual([field]);
});

test.each(['calendar', 'changes'])('%s: an address is told once, and revoked', async (kind) => {
	const { ctx, api } = await lake({ address: 'https://ice.example.org' });
	const made = await api('POST', `${AT}/${kind}`);
	expect(made.status).toBe(201);
	expect(made.headers.get('cache-control')).toBe('no-store');
	const { address } = (await made.json()) as { address: string };
	expect(address).toMatch(
		/^https:\/\/ice\.example\.org\/feeds\/[\w-]{43}\/(calendar\.ics|changes\.atom)$/
	);
	expect((await fetchFeed(ctx, new URL(address).pathname)).status).toBe(200);
	const told = JSON.stringify(await (await api('GET', AT)).json());
	expect(told).not.toContain(address.split('/')[4]);
	expect((await api('DELETE', `${AT}/${kind}`)).status).toBe(204);
	expect((await fetchFeed(ctx, new URL(address).pathname)).status).toBe(404);
	expect(await (await api('GET', AT)).json()).toMatchObject({ [kind]: null });
});

test('a webhook is set up with a key that is told once, changed and removed', async () => {
	const { api } = await lake();
	const address = 'https://hooks.example.org/ice?room=7';
	const made = await api('PUT', `${AT}/webhook`, { body: { address } });
	const { key, host, kinds } = (await made.json()) as Record<string, unknown>;
	expect(host).toBe('hooks.example.org');
	expect(Buffer.from(String(key), 'base64url')).toHaveLength(32);
	expect(kinds).toContain('thawAhead');
	expect(kinds).not.toContain('readingLogged');
	const told = await (await api('GET', AT)).text();
	expect(told).not.toContain(String(key));
	expect(told).not.toContain('room=7');
	const changed = await api('PATCH', `${AT}/webhook`, { body: { kinds: ['floodAhead'] } });
	expect(await changed.json()).toMatchObject({ kinds: ['floodAhead'], waiting: 0 });
	const again = await api('PUT', `${AT}/webhook`, { body: { address } });
	expect(((await again.json()) as { key: string }).key).not.toBe(key);
	expect((await api('DELETE', `${AT}/webhook`)).status).toBe(204);
	expect(await (await api('GET', AT)).json()).toMatchObject({ webhook: null });
});

test.each(['http://127.0.0.1:9/', 'http://169.254.169.254/', 'ftp://hooks.example.org/', 'ice'])(
	'a webhook to %s is refused beside its field',
	async (address) => {
		const { api } = await lake();
		const response = await api('PUT', `${AT}/webhook`, { body: { address } });
		expect(response.status).toBe(400);
		const { issues } = (await response.json()) as { issues: { field: string }[] };
		expect(issues.map(({ field }) => field)).toEqual(['address']);
	}
);

test('what is asked of a webhook or a lake that is not there is not found', async () => {
	const { api } = await lake();
	for (const end of ['test', 'resume']) {
		expect((await api('POST', `${AT}/webhook/${end}`)).status).toBe(404);
	}
	for (const [method, end] of [
		['GET', ''],
		['POST', '/calendar'],
		['DELETE', '/changes'],
		['GET', '/messages']
	] as const) {
		const response = await api(method, `/api/v1/lakes/nowhere/telling${end}`);
		expect(response.status, `${method} ${end}`).toBe(404);
	}
});

test('a test message to nobody says why it did not arrive', async () => {
	const { api } = await lake();
	const body = { address: 'https://hooks.invalid/' };
	await api('PUT', `${AT}/webhook`, { body });
	const tried = await api('POST', `${AT}/webhook/test`);
	expect(await tried.json()).toMatchObject({
		isTaken: false,
		status: null,
		trouble: expect.stringMatching(/^The name hooks\.invalid (is not known|could not be looked up)/)
	});
});
