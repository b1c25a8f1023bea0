import { expect, test } from 'vitest';
import type { LoadCase } from '#lib/model/load-case.ts';
import { standardLoads } from '../../../src/lib/server/services/charts.ts';
import type { ListedLoad } from '../../../src/lib/server/services/shown-loads.ts';
import { apiOf } from '../../support/api.ts';
import { freshContext, inventedLake } from '../../support/fresh-context.ts';

async function lakeApi() {
	const ctx = await freshContext();
	const { id } = await inventedLake(ctx);
	const call = apiOf(ctx);
	const at = `/api/v1/lakes/${id}/loads`;
	return {
		at,
		ask: (method: string, path: string, body?: unknown) =>
			call(method, `${at}${path}`, body === undefined ? {} : { body })
	};
}

const PICKUP = { name: 'Pickup of the tests', mass_kg: 2400, use: 'lightTruck' };

test('a load is added with defaults for what is absent, read, changed and deleted', async () => {
	const { at, ask } = await lakeApi();
	const added = await ask('POST', '', PICKUP);
	const load = (await added.json()) as LoadCase;
	expect(added.status).toBe(201);
	expect(added.headers.get('location')).toBe(`${at}/${load.id}`);
	expect(load).toEqual({
		...PICKUP,
		id: load.id,
		parked_h: 0,
		wetCracks: 0,
		current: false,
		group: false,
		trailer: null,
		count: 1,
		spacing_m: null
	});
	const trailer = { mass_kg: 600, apart_m: null };
	const changed = await ask('PATCH', `/${load.id}`, { trailer: { mass_kg: 600 }, count: 2 });
	expect(await changed.json()).toEqual({ ...load, trailer, count: 2 });
	expect(await (await ask('GET', `/${load.id}`)).json()).toEqual({ ...load, trailer, count: 2 });
	expect((await ask('DELETE', `/${load.id}`)).status).toBe(204);
	expect((await ask('GET', `/${load.id}`)).status).toBe(404);
});

test('the list says which loads are standard and which are shown', async () => {
	const { ask } = await lakeApi();
	const { id } = (await (await ask('POST', '', PICKUP)).json()) as LoadCase;
	const put = await ask('PUT', '/shown', { shown: [id, 'on-foot'] });
	expect(await put.json()).toEqual({ shown: ['on-foot', id] });
	expect(await (await ask('GET', '/shown')).json()).toEqual({ shown: ['on-foot', id] });
	const list = (await (await ask('GET', '')).json()) as ListedLoad[];
	expect(list).toHaveLength(standardLoads.length + 1);
	expect(list.filter(({ isShown }) => isShown).map((each) => each.id)).toEqual(['on-foot', id]);
	expect(list.filter(({ isStandard }) => !isStandard).map((each) => each.id)).toEqual([id]);
});

test.each([
	['POST', '', { ...PICKUP, count: 0 }, 'count'],
	['POST', '', { ...PICKUP, trailer: { mass_kg: -5 } }, 'trailer.mass_kg'],
	['POST', '', { ...PICKUP, wheels: 6 }, ''],
	['PUT', '/shown', { shown: [] }, 'shown'],
	['PUT', '/shown', { shown: ['tank'] }, 'shown']
])('%s %s with %j is refused and the field named', async (method, path, body, field) => {
	const { ask } = await lakeApi();
	const refused = await ask(method, path, body);
	expect(refused.status).toBe(400);
	const { issues } = (await refused.json()) as { issues: { field: string }[] };
	expect(issues.map((issue) => issue.field)).toEqual([field]);
});

test('a standard load can be read and not changed', async () => {
	const { ask } = await lakeApi();
	expect(await (await ask('GET', '/car')).json()).toMatchObject({ id: 'car', mass_kg: 1800 });
	expect((await ask('PATCH', '/car', { mass_kg: 1 })).status).toBe(404);
	expect((await ask('DELETE', '/car')).status).toBe(404);
});
