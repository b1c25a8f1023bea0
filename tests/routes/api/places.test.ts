import { expect, test } from 'vitest';
import { apiOf } from '../../support/api.ts';
import { drilledLake } from '../../support/drilled-lake.ts';
import { freshContext, inventedLake } from '../../support/fresh-context.ts';

async function api(facts: object = {}) {
	const ctx = await freshContext();
	const { id } = await inventedLake(ctx, { ...facts });
	const call = apiOf(ctx);
	const ask = async (method: string, path: string, body?: unknown) => {
		const response = await call(
			method,
			`/api/v1/lakes/${id}${path}`,
			body === undefined ? {} : { body }
		);
		const text = await response.text();
		return { status: response.status, body: text === '' ? null : JSON.parse(text) };
	};
	return { call, id, ask };
}

const REEDS = { name: 'Reeds', kind: 'bogOrWeeds', latitude: 47.41, longitude: -38.2 };

test('a weak spot is added, replaced and taken off the list', async () => {
	const { ask } = await api();
	const made = await ask('POST', '/weak-spots', REEDS);
	expect(made).toMatchObject({
		status: 201,
		body: { name: 'Reeds', position: { latitude: 47.41 } }
	});
	const path = `/weak-spots/${made.body.id}`;
	const changed = await ask('PUT', path, { ...REEDS, checkedOn: '2027-02-09' });
	expect(changed).toMatchObject({ status: 200, body: { checkedOn: '2027-02-09' } });
	expect((await ask('GET', '/weak-spots')).body).toMatchObject([
		{ spot: { name: 'Reeds' }, check: { state: 'neverDrilled', lastOn: '2027-02-09' } }
	]);
	expect((await ask('DELETE', path)).status).toBe(204);
	expect((await ask('GET', path)).status).toBe(404);
});

test.each([
	['half a position', { ...REEDS, longitude: null }, 400, 'longitude'],
	['no kind of ours', { ...REEDS, kind: 'swamp' }, 400, 'kind'],
	['a name that is taken', REEDS, 409, 'name'],
	['a field that nobody knows', { ...REEDS, name: 'B', depth_m: 3 }, 400, '']
])('%s is refused with its field', async (_, spot, status, field) => {
	const { ask } = await api();
	await ask('POST', '/weak-spots', REEDS);
	const refused = await ask('POST', '/weak-spots', spot);
	expect(refused.status).toBe(status);
	expect(refused.body.issues.map((issue: { field: string }) => issue.field)).toContain(field);
});

test('a route is added, tells its holes, and is deleted', async () => {
	const { ask } = await api({ water: 'river' });
	const { body: spot } = await ask('POST', '/weak-spots', REEDS);
	const route = { name: 'Out', points: [{ name: 'Bank' }, { spot: spot.id, leg_m: 110 }] };
	const made = await ask('POST', '/routes', route);
	expect(made.status).toBe(201);
	const holes = await ask('GET', `/routes/${made.body.id}/holes?vehicle=1`);
	expect(holes.body).toMatchObject({ status: 'planned', plan: { length_m: 110 } });
	// A river: 10 m apart for 50 m, then 15 m.
	expect(holes.body.plan.holes).toHaveLength(10);
	expect((await ask('GET', '/routes')).body).toMatchObject([{ answer: { unknown: [0, 1] } }]);
	expect((await ask('DELETE', `/routes/${made.body.id}`)).status).toBe(204);
	expect((await ask('GET', `/routes/${made.body.id}`)).status).toBe(404);
});

test('a route over a weak spot that is none is refused at its point', async () => {
	const { ask } = await api();
	const refused = await ask('POST', '/routes', {
		name: 'A',
		points: [{ name: 'B' }, { spot: 'w-x' }]
	});
	expect(refused).toMatchObject({ status: 400, body: { issues: [{ field: 'points.1.spot' }] } });
});

test('GPX goes out and comes in, and what is none is refused', async () => {
	const { call, id, ask } = await api();
	await ask('POST', '/weak-spots', REEDS);
	const address = `/api/v1/lakes/${id}/places.gpx`;
	const out = await call('GET', address);
	expect(out.headers.get('content-type')).toContain('application/gpx+xml');
	expect(out.headers.get('content-disposition')).toContain('.gpx"');
	const text = await out.text();
	const send = (body: string, type = 'application/gpx+xml') =>
		call('POST', address, { text: body, headers: { 'content-type': type } });
	const again = await send(text);
	expect([again.status, await again.json()]).toEqual([
		201,
		{ spots: 0, routes: 0, notes: ['1 of the waypoints are on the list already.'] }
	]);
	expect((await send(`<!DOCTYPE gpx>${text}`)).status).toBe(400);
	expect((await send(text, 'text/csv')).status).toBe(415);
	expect((await send('x'.repeat(1_000_001))).status).toBe(413);
});

test('a trip note is kept and forgotten', async () => {
	const { ask } = await api();
	const note = { emergency: '000', party: 'two', back: null, told: null };
	expect((await ask('PUT', '/trip', note)).body).toEqual(note);
	expect((await ask('GET', '/trip')).body).toEqual(note);
	expect((await ask('PUT', '/trip', {})).body.emergency).toBeNull();
	expect((await ask('PUT', '/trip', { phone: '1' })).status).toBe(400);
});

test('over a drilled lake a route of plain points has an answer for every load', async () => {
	const { ctx, id } = await drilledLake();
	const call = apiOf(ctx);
	const points = [{ name: 'Bank' }, { name: 'Bar', leg_m: 90 }];
	await call('POST', `/api/v1/lakes/${id}/routes`, { body: { name: 'Out', points } });
	const [state] = await (await call('GET', `/api/v1/lakes/${id}/routes`)).json();
	expect(state.answer.loads.length).toBeGreaterThan(5);
	expect(state.answer.points[0]).toMatchObject({ by: 'bound' });
	expect(state.answer.points[0].effective_m).toBeGreaterThan(0);
});
