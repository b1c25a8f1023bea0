import { expect, test } from 'vitest';
import { apiOf } from '../../support/api.ts';
import { freshContext } from '../../support/fresh-context.ts';

const POND = { name: 'Test Pond', latitude: 47.4, longitude: -38.2, water: 'lake' };
const READING = {
	on: '2027-01-10',
	kind: 'measured',
	holes: [{ total_m: 0.3 }, { total_m: 0.32 }]
};

async function api() {
	return apiOf(await freshContext());
}

async function json(response: Response | Promise<Response>): Promise<Record<string, unknown>> {
	return (await (await response).json()) as Record<string, unknown>;
}

test('the server says that it is well', async () => {
	const call = await api();
	const response = await call('GET', '/api/v1/health');
	expect(response.status).toBe(200);
	expect(await json(response)).toEqual({ status: 'ok' });
});

test('a lake is made, listed, changed and deleted', async () => {
	const call = await api();
	const made = await call('POST', '/api/v1/lakes', { body: POND });
	expect(made.status).toBe(201);
	expect(made.headers.get('location')).toBe('/api/v1/lakes/test-pond');
	expect(await json(made)).toMatchObject({ id: 'test-pond', ...POND, elevation_m: null });
	expect(await json(call('GET', '/api/v1/lakes'))).toMatchObject([{ id: 'test-pond' }]);
	const changed = await call('PATCH', '/api/v1/lakes/test-pond', { body: { area_km2: 1.5 } });
	expect(await json(changed)).toMatchObject({ name: 'Test Pond', area_km2: 1.5 });
	expect((await call('DELETE', '/api/v1/lakes/test-pond')).status).toBe(204);
	expect((await call('GET', '/api/v1/lakes/test-pond')).status).toBe(404);
});

test('a winter is put and got', async () => {
	const call = await api();
	await call('POST', '/api/v1/lakes', { body: POND });
	const body = { freezeUpOn: '2026-11-20', events: [{ kind: 'packed', on: '2027-01-03' }] };
	const put = await call('PUT', '/api/v1/lakes/test-pond/winters/2026-27', { body });
	expect(put.status).toBe(200);
	expect(await json(call('GET', '/api/v1/lakes/test-pond/winters/2026-27?site=main'))).toEqual({
		winter: '2026-27',
		freezeUpOn: '2026-11-20',
		freezeUpBy: null,
		iceOutOn: null,
		events: [{ kind: 'packed', on: '2027-01-03', density_kg_m3: null }]
	});
});

test('one reading or an array of them is added, changed and deleted', async () => {
	const call = await api();
	await call('POST', '/api/v1/lakes', { body: POND });
	const address = '/api/v1/lakes/test-pond/readings';
	const one = await call('POST', address, { body: READING });
	expect(one.status).toBe(201);
	const { ids } = (await one.json()) as { ids: string[] };
	expect(ids).toHaveLength(1);
	const two = await call('POST', address, { body: [READING, { ...READING, on: '2026-12-01' }] });
	expect(((await two.json()) as { ids: string[] }).ids).toHaveLength(2);
	expect(await json(call('GET', `${address}?winter=2026-27`))).toHaveLength(3);
	expect(await json(call('GET', `${address}?winter=2026-27`))).toMatchObject([
		{ secondHand: false },
		{},
		{}
	]);
	const body = { remark: 'windy', by: null, secondHand: true };
	const changed = await call('PATCH', `${address}/${ids[0]}`, { body });
	expect(await json(changed)).toMatchObject({
		id: ids[0],
		remark: 'windy',
		secondHand: true,
		holes: [{}, {}]
	});
	expect((await call('DELETE', `${address}/${ids[0]}`)).status).toBe(204);
	expect(await json(call('GET', address))).toHaveLength(2);
});

test('an array with one bad reading adds none of them', async () => {
	const call = await api();
	await call('POST', '/api/v1/lakes', { body: POND });
	const body = [READING, { ...READING, holes: [] }];
	expect((await call('POST', '/api/v1/lakes/test-pond/readings', { body })).status).toBe(400);
	expect(await json(call('GET', '/api/v1/lakes/test-pond/readings'))).toEqual([]);
});
