import { expect, test } from 'vitest';
import {
	createLake,
	deleteLake,
	getLake,
	LakeNotFound,
	lakeChange,
	listLakes,
	newLake,
	restoreLake,
	updateLake
} from '../../../src/lib/server/services/lakes.ts';
import { freshContext, inventedLake } from '../../support/fresh-context.ts';

const PLAIN = { name: 'Åsta pond', latitude: 62.9, longitude: 27.7, water: 'lake' };

test('a lake takes its id from its name and its time zone from its position', async () => {
	const ctx = await freshContext();
	const lake = await createLake(ctx, newLake.parse(PLAIN));
	expect(lake).toEqual({
		id: 'asta-pond',
		name: 'Åsta pond',
		latitude: 62.9,
		longitude: 27.7,
		elevation_m: null,
		area_km2: null,
		meanDepth_m: null,
		water: 'lake',
		timeZone: 'Europe/Helsinki',
		chartSet: 'strict',
		isInvented: false,
		today: null
	});
	expect(await getLake(ctx, 'asta-pond')).toEqual(lake);
});

test('two lakes of one name have two ids, and no lake takes the address of a page', async () => {
	const ctx = await freshContext();
	const ids = [];
	for (const name of ['Pond', 'Pond', 'New', '湖']) {
		ids.push((await inventedLake(ctx, { name })).id);
	}
	expect(new Set(ids).size).toBe(4);
	expect(ids[0]).toBe('pond');
	expect(ids[1]).toMatch(/^pond-[a-z0-9]{6}$/);
	expect(ids[2]).toMatch(/^new-[a-z0-9]{6}$/);
	expect(ids[3]).toBe('lake');
});

test('a change keeps what it does not name, and null makes unknown again', async () => {
	const ctx = await freshContext();
	const { id } = await inventedLake(ctx);
	await updateLake(ctx, id, lakeChange.parse({ area_km2: null, chartSet: 'common' }));
	expect(await getLake(ctx, id)).toMatchObject({
		name: 'Test Lake',
		area_km2: null,
		meanDepth_m: 6,
		chartSet: 'common'
	});
});

test('a deleted lake is gone until it is restored', async () => {
	const ctx = await freshContext();
	const { id } = await inventedLake(ctx);
	await deleteLake(ctx, id);
	await expect(getLake(ctx, id)).rejects.toThrow(LakeNotFound);
	expect(await listLakes(ctx)).toEqual([]);
	await restoreLake(ctx, id);
	expect(await listLakes(ctx)).toMatchObject([{ id }]);
});

test('a lake that never was cannot be restored', async () => {
	await expect(restoreLake(await freshContext(), 'nowhere')).rejects.toThrow('No lake "nowhere"');
});

test.each([
	[{ latitude: 91 }, 'latitude'],
	[{ longitude: Number.NaN }, 'longitude'],
	[{ name: '   ' }, 'name'],
	[{ water: 'sea' }, 'water'],
	[{ timeZone: 'Mars/North' }, 'timeZone'],
	[{ area_km2: -1 }, 'area_km2']
])('%j is refused and named', (wrong, field) => {
	const { error } = newLake.safeParse({ ...PLAIN, ...wrong });
	expect(error?.issues.map(({ path }) => path[0])).toEqual([field]);
});

test('a field that nobody knows is refused', () => {
	expect(newLake.safeParse({ ...PLAIN, depth: 3 }).success).toBe(false);
});
