import { expect, test } from 'vitest';
import { apiOf } from '../../support/api.ts';
import { freshContext, inventedLake } from '../../support/fresh-context.ts';

const HOLE = { on: '2027-01-10', place: 'Bay', kind: 'measured', holes: [{ total_m: 0.31 }] };

async function storedReading() {
	const ctx = await freshContext();
	const { id: lake } = await inventedLake(ctx);
	const ask = apiOf(ctx);
	const list = `/api/v1/lakes/${lake}/readings`;
	const { ids } = (await (await ask('POST', list, { body: HOLE })).json()) as { ids: string[] };
	return { ask, list, address: `${list}/${ids[0]}` };
}

test('a reading tells its version, in the list and as its ETag', async () => {
	const { ask, list, address } = await storedReading();
	await ask('PATCH', address, { body: { place: 'Point' } });
	const one = await ask('GET', address);
	expect(one.headers.get('etag')).toBe('"2"');
	expect(await one.json()).toMatchObject({ place: 'Point', version: 2 });
	expect(await (await ask('GET', list)).json()).toMatchObject([{ version: 2 }]);
});

test('a change of an old version is answered 409 with what stands, and waits among the others', async () => {
	const { ask, address } = await storedReading();
	await ask('PATCH', address, { body: { place: 'Hers', version: 1 } });
	const late = await ask('PATCH', address, { body: { place: 'His', version: 1 } });
	expect(late.status).toBe(409);
	expect(late.headers.get('content-type')).toBe('application/problem+json');
	const told = (await late.json()) as { aside: number };
	expect(told).toMatchObject({ stands: { place: 'Hers', version: 2 } });
	const others = await (await ask('GET', `${address}/versions`)).json();
	expect(others).toMatchObject([
		{ id: told.aside, kind: 'aside', reading: { place: 'His' } },
		{ kind: 'replaced', reading: { place: 'Bay' } }
	]);
	expect((await ask('DELETE', `${address}/versions/${told.aside}`)).status).toBe(204);
	expect((await ask('DELETE', `${address}/versions/${told.aside}`)).status).toBe(404);
});

test('If-Match of an old version changes and deletes nothing', async () => {
	const { ask, address } = await storedReading();
	await ask('PATCH', address, { body: { place: 'Hers' } });
	const headers = { 'if-match': '"1"' };
	expect((await ask('PATCH', address, { headers, body: { place: 'His' } })).status).toBe(412);
	expect((await ask('DELETE', address, { headers })).status).toBe(412);
	expect(await (await ask('GET', address)).json()).toMatchObject({ place: 'Hers' });
	expect((await ask('DELETE', address, { headers: { 'if-match': '"2"' } })).status).toBe(204);
});

test('an If-Match that is no ETag of a reading is refused', async () => {
	const { ask, address } = await storedReading();
	const headers = { 'if-match': 'W/"x"' };
	expect((await ask('PATCH', address, { headers, body: { place: 'His' } })).status).toBe(400);
});

test('a client id that came with another reading before is answered 409', async () => {
	const { ask, list } = await storedReading();
	const clientId = crypto.randomUUID();
	const send = (total_m: number) =>
		ask('POST', list, { body: { ...HOLE, holes: [{ total_m }], clientId } });
	const [first, again, other] = [await send(0.2), await send(0.2), await send(0.3)];
	expect([first.status, again.status, other.status]).toEqual([201, 201, 409]);
	expect(await again.json()).toEqual(await first.json());
});
