import { expect, test } from 'vitest';
import { chartMinimums, standardLoads } from '../../../src/lib/server/services/charts.ts';
import { loadInput } from '../../../src/lib/server/services/load-input.ts';
import {
	addLoad,
	deleteLoad,
	listLoads,
	listOwnLoads,
	LoadNotFound,
	restoreLoad,
	updateLoad
} from '../../../src/lib/server/services/own-loads.ts';
import { freshContext, inventedLake } from '../../support/fresh-context.ts';

const SHELTER = loadInput.parse({ name: 'Shelter on skids', mass_kg: 900, parked_h: 48 });

async function emptyLake() {
	const ctx = await freshContext();
	return { ctx, lake: (await inventedLake(ctx)).id };
}

test('every lake starts with the standard loads, each with a row in both sets', async () => {
	const { ctx, lake } = await emptyLake();
	expect(await listLoads(ctx, lake)).toEqual(standardLoads);
	expect(standardLoads.length).toBeGreaterThan(0);
	for (const { use } of standardLoads) {
		const sets = chartMinimums.filter((minimum) => minimum.use === use).map(({ set }) => set);
		expect(sets.toSorted()).toEqual(['common', 'strict']);
	}
});

test("a lake's own load follows the standard ones and can be changed", async () => {
	const { ctx, lake } = await emptyLake();
	const { id } = await addLoad(ctx, lake, SHELTER);
	expect((await listLoads(ctx, lake)).at(-1)).toEqual({ id, ...SHELTER });
	const heavier = { ...SHELTER, mass_kg: 1200, use: 'car' as const, wetCracks: 2 as const };
	await updateLoad(ctx, lake, id, { ...heavier, current: true, group: true });
	expect(await listOwnLoads(ctx, lake)).toEqual([{ id, ...heavier, current: true, group: true }]);
});

test('a trailer, the others that go with it and their spacing are kept', async () => {
	const { ctx, lake } = await emptyLake();
	const trailer = { mass_kg: 700, apart_m: 25 };
	const convoy = { ...SHELTER, trailer, count: 3, spacing_m: 40 };
	const { id } = await addLoad(ctx, lake, convoy);
	expect(await listOwnLoads(ctx, lake)).toEqual([{ id, ...convoy }]);
	await updateLoad(ctx, lake, id, { trailer: { mass_kg: 700, apart_m: null }, spacing_m: null });
	const hitched = { ...convoy, trailer: { mass_kg: 700, apart_m: null }, spacing_m: null };
	expect(await listOwnLoads(ctx, lake)).toEqual([{ id, ...hitched }]);
	await updateLoad(ctx, lake, id, { trailer: null });
	expect(await listOwnLoads(ctx, lake)).toEqual([{ id, ...hitched, trailer: null }]);
});

test('a deleted load is gone until it is restored', async () => {
	const { ctx, lake } = await emptyLake();
	const { id } = await addLoad(ctx, lake, SHELTER);
	await deleteLoad(ctx, lake, id);
	expect(await listOwnLoads(ctx, lake)).toEqual([]);
	await expect(updateLoad(ctx, lake, id, SHELTER)).rejects.toThrow(LoadNotFound);
	await restoreLoad(ctx, lake, id);
	expect(await listOwnLoads(ctx, lake)).toEqual([{ id, ...SHELTER }]);
});

test('a standard load cannot be changed or deleted', async () => {
	const { ctx, lake } = await emptyLake();
	const [first] = standardLoads;
	await expect(deleteLoad(ctx, lake, first?.id ?? '')).rejects.toThrow(LoadNotFound);
});

test.each([
	[{ mass_kg: 0 }, 'mass_kg'],
	[{ parked_h: -1 }, 'parked_h'],
	[{ wetCracks: 3 }, 'wetCracks'],
	[{ use: 'tank' }, 'use'],
	[{ name: '' }, 'name'],
	[{ trailer: { mass_kg: 0 } }, 'trailer'],
	[{ trailer: { mass_kg: 200, apart_m: -1 } }, 'trailer'],
	[{ count: 0 }, 'count'],
	[{ count: 1.5 }, 'count'],
	[{ spacing_m: -1 }, 'spacing_m']
])('%j is refused and named', (wrong, field) => {
	const { error } = loadInput.safeParse({ ...SHELTER, ...wrong });
	expect(error?.issues.map(({ path }) => path[0])).toEqual([field]);
});
