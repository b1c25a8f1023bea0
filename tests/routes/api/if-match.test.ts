import { expect, test } from 'vitest';
import { apiAddresses, apiOf } from '../../support/api.ts';
import { freshContext, inventedLake } from '../../support/fresh-context.ts';
import { contextWithService, inventedSource, useSource } from '../../support/invented-source.ts';

type Call = ReturnType<typeof apiOf>;

async function made(call: Call, address: string, body: object): Promise<string> {
	const response = await call('POST', address, { body });
	expect(response.status).toBe(201);
	const { id, ids } = (await response.json()) as { id?: string; ids?: string[] };
	return id ?? ids?.[0] ?? '';
}

/** Each change of the API that is not made to a reading itself: where, two bodies, and where it is read. */
const CHANGES: Record<
	string,
	(call: Call, lake: string) => Promise<{ at: string; bodies: [object, object] }>
> = {
	'PATCH /api/v1/lakes/{lake}': async (_, lake) => ({
		at: lake,
		bodies: [{ water: 'river' }, { meanDepth_m: 4 }]
	}),
	'PUT /api/v1/lakes/{lake}/winters/{winter}': async (_, lake) => ({
		at: `${lake}/winters/2026-27?site=main`,
		bodies: [{ freezeUpOn: '2026-12-12' }, { freezeUpOn: '2026-12-01' }]
	}),
	'PUT /api/v1/lakes/{lake}/winters/{winter}/removal': async (_, lake) => ({
		at: `${lake}/winters/2026-27/removal`,
		bodies: [
			{
				removalOn: '2027-03-10',
				leads: [
					{ load: 'on-foot', lead_d: 1 },
					{ load: 'car', lead_d: 2 }
				]
			},
			{ removalOn: null, leads: [] }
		]
	}),
	'PUT /api/v1/lakes/{lake}/trip': async (_, lake) => ({
		at: `${lake}/trip`,
		bodies: [{ emergency: '112' }, { party: 'Two' }].map((note) => ({
			emergency: null,
			party: null,
			back: null,
			told: null,
			...note
		})) as [object, object]
	}),
	'PUT /api/v1/lakes/{lake}/weak-spots/{id}': async (call, lake) => {
		const id = await made(call, `${lake}/weak-spots`, { name: 'Point', kind: 'rocks' });
		const bodies: [object, object] = [
			{ name: 'Point', kind: 'current' },
			{ name: 'Cape', kind: 'rocks' }
		];
		return { at: `${lake}/weak-spots/${id}`, bodies };
	},
	'PUT /api/v1/lakes/{lake}/routes/{id}': async (call, lake) => {
		const way = (...names: string[]) => ({
			name: 'Over',
			points: names.map((name) => ({ name, leg_m: 300 }))
		});
		const id = await made(call, `${lake}/routes`, way('Landing', 'Shore'));
		const bodies: [object, object] = [way('Landing', 'Narrows', 'Shore'), way('Landing', 'Cape')];
		return { at: `${lake}/routes/${id}`, bodies };
	},
	'PATCH /api/v1/lakes/{lake}/sites/{site}': async (call, lake) => {
		const id = await made(call, `${lake}/sites`, { name: 'Road', kind: 'bay' });
		const bodies: [object, object] = [{ kind: 'track', parent: 'main' }, { name: 'Old road' }];
		return { at: `${lake}/sites/${id}`, bodies };
	},
	'PATCH /api/v1/lakes/{lake}/loads/{id}': async (call, lake) => {
		const id = await made(call, `${lake}/loads`, { name: 'Pickup', mass_kg: 2000 });
		return { at: `${lake}/loads/${id}`, bodies: [{ mass_kg: 4000 }, { name: 'Old' }] };
	},
	'PUT /api/v1/lakes/{lake}/loads/shown': async (_, lake) => ({
		at: `${lake}/loads/shown`,
		bodies: [{ shown: ['on-foot', 'car'] }, { shown: ['on-foot'] }]
	}),
	'PUT /api/v1/lakes/{lake}/readings/{id}/position': async (call, lake) => {
		const reading = { on: '2027-01-10', kind: 'measured', holes: [{ total_m: 0.2 }] };
		const id = await made(call, `${lake}/readings`, reading);
		const bodies: [object, object] = [
			{ latitude: 61, longitude: 25 },
			{ latitude: 61, longitude: 26 }
		];
		return { at: `${lake}/readings/${id}/position`, bodies };
	},
	'PUT /api/v1/lakes/{lake}/sources': async (_, lake) => ({
		at: `${lake}/sources`,
		bodies: [{ order: [{ source: 'csv' }] }, { order: [] }]
	}),
	'PATCH /api/v1/lakes/{lake}/telling': async (_, lake) => ({
		at: `${lake}/telling`,
		bodies: [{ loads: ['car'] }, { readingAfter_d: 5 }]
	}),
	'PATCH /api/v1/sources/{id}': async () => ({
		at: '/api/v1/sources/invented-weather',
		bodies: [{ isOn: false }, { source: inventedSource({ name: 'Renamed' }) }]
	})
};

async function lake() {
	const { ctx } = await contextWithService('2027-01-20T12:20:00Z');
	const { id } = await inventedLake(ctx, { timeZone: 'Etc/UTC' });
	await useSource(ctx, id);
	return { call: apiOf(ctx), address: `/api/v1/lakes/${id}` };
}

test.each(Object.entries(CHANGES))(
	'%s is refused where another version stands by now',
	async (named, begin) => {
		const { call, address } = await lake();
		const { at, bodies } = await begin(call, address);
		const [method = ''] = named.split(' ');
		const seen = await call('GET', at);
		const etag = seen.headers.get('etag') ?? '';
		expect(etag).toMatch(/^"[0-9a-f]{24}"$/);
		const send = (body: object, ifMatch: string) =>
			call(method, at, { body, headers: { 'if-match': ifMatch } });

		const first = await send(bodies[0], etag);
		expect(first.status).toBe(200);
		const stands = await call('GET', at);
		const now = stands.headers.get('etag') ?? '';
		expect(now).not.toBe(etag);
		expect(first.headers.get('etag')).toBe(now);

		const late = await send(bodies[1], etag);
		expect(late.status).toBe(412);
		expect(late.headers.get('etag')).toBe(now);
		const body = await stands.json();
		expect(await late.json()).toMatchObject({ title: 'Precondition Failed', stands: body });
		expect(await (await call('GET', at)).json()).toEqual(body);

		expect((await send(bodies[1], 'as seen')).status).toBe(400);
		// One of several that stands is enough, and without the header nothing is asked.
		expect((await send(bodies[1], `${etag}, ${now}`)).status).toBe(200);
		expect((await send(bodies[0], '*')).status).toBe(200);
		expect((await call(method, at, { body: bodies[1] })).status).toBe(200);
	}
);

const DELETED = Object.entries(CHANGES).filter(([named]) =>
	apiAddresses.some(
		({ address, methods }) => named.endsWith(` ${address}`) && methods.includes('DELETE')
	)
);

test.each(DELETED)('what %s changes is deleted only as it was seen', async (named, begin) => {
	const { call, address } = await lake();
	const { at, bodies } = await begin(call, address);
	const [method = ''] = named.split(' ');
	const remove = (ifMatch: string) => call('DELETE', at, { headers: { 'if-match': ifMatch } });
	const etag = (await call('GET', at)).headers.get('etag') ?? '';
	expect((await call(method, at, { body: bodies[0] })).status).toBe(200);
	const stands = await call('GET', at);
	const now = stands.headers.get('etag') ?? '';

	const late = await remove(etag);
	expect(late.status).toBe(412);
	expect(await late.json()).toMatchObject({ stands: await stands.json() });
	expect((await call('GET', at)).headers.get('etag')).toBe(now);
	expect((await remove('as seen')).status).toBe(400);
	expect((await remove(now)).status).toBe(204);
	expect((await call('GET', at)).headers.get('etag')).not.toBe(now);
});

test('of two changes made at the same moment to one version one is refused', async () => {
	const { call, address } = await lake();
	const at = `${address}/winters/2026-27`;
	const etag = (await call('GET', at)).headers.get('etag') ?? '';
	const answers = await Promise.all(
		['2026-12-12', '2026-12-01'].map((freezeUpOn) =>
			call('PUT', at, { body: { freezeUpOn }, headers: { 'if-match': etag } })
		)
	);
	expect(answers.map(({ status }) => status)).toEqual([200, 412]);
	expect(await (await call('GET', at)).json()).toMatchObject({ freezeUpOn: '2026-12-12' });
});

test('a webhook is chosen for anew only as its answers told it', async () => {
	const { call, address } = await lake();
	const at = `${address}/telling/webhook`;
	const body = { address: 'https://receiver.example/hook', kinds: ['statusChanged'] };
	const put = await call('PUT', at, { body });
	expect(put.status).toBe(200);
	expect(put.headers.get('cache-control')).toBe('no-store');
	const etag = put.headers.get('etag') ?? '';
	const send = (kinds: string[]) =>
		call('PATCH', at, { body: { kinds }, headers: { 'if-match': etag } });
	expect((await send(['thawAhead'])).status).toBe(200);
	expect((await send(['wentThrough'])).status).toBe(412);
	const again = await call('PUT', at, { body, headers: { 'if-match': etag } });
	expect(again.status).toBe(412);
	const removed = await call('DELETE', at, { headers: { 'if-match': etag } });
	expect(removed.status).toBe(412);
});

test('every change of the API takes If-Match, and its description says so', async () => {
	const call = apiOf(await freshContext());
	const { paths } = (await (await call('GET', '/api/v1/openapi.json')).json()) as {
		paths: Record<
			string,
			Record<string, { parameters?: { name: string }[]; responses: Record<string, unknown> }>
		>;
	};
	const tried = new Set(Object.keys(CHANGES));
	for (const { address, methods } of apiAddresses)
		for (const method of methods.filter((name) => name === 'PUT' || name === 'PATCH')) {
			for (const changing of [method, ...methods.filter((name) => name === 'DELETE')]) {
				const told = paths[address]?.[changing.toLowerCase()];
				expect(told?.parameters?.map(({ name }) => name)).toContain('if-match');
				expect(told?.responses).toHaveProperty('412');
			}
			const isElsewhere =
				address.endsWith('/webhook') || (method === 'PATCH' && address.includes('/readings/'));
			expect([`${method} ${address}`, tried.has(`${method} ${address}`)]).toEqual([
				`${method} ${address}`,
				!isElsewhere
			]);
		}
});
