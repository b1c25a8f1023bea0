import { expect, test } from 'vitest';
import { standardLoads } from '../../../src/lib/server/services/charts.ts';
import { lakeView } from '../../../src/lib/server/services/lake-view.ts';
import { loadInput } from '../../../src/lib/server/services/load-input.ts';
import { addLoad, deleteLoad, LoadNotFound } from '../../../src/lib/server/services/own-loads.ts';
import { listedLoads, setShownLoads } from '../../../src/lib/server/services/shown-loads.ts';
import { freshContext, inventedLake } from '../../support/fresh-context.ts';

const SLED = loadInput.parse({ name: 'Invented sled', mass_kg: 120 });

async function emptyLake() {
	const ctx = await freshContext();
	const lake = (await inventedLake(ctx)).id;
	const shown = async () =>
		(await listedLoads(ctx, lake)).filter(({ isShown }) => isShown).map(({ id }) => id);
	return { ctx, lake, shown };
}

test('all loads are shown until somebody chooses', async () => {
	const { shown } = await emptyLake();
	expect(await shown()).toEqual(standardLoads.map(({ id }) => id));
});

test('who walks chooses what is on foot, and a load added later is shown at once', async () => {
	const { ctx, lake, shown } = await emptyLake();
	await setShownLoads(ctx, lake, { shown: ['two-with-sled', 'on-foot'] });
	expect(await shown()).toEqual(['on-foot', 'two-with-sled']);
	expect((await lakeView(ctx, lake)).shown).toEqual(['on-foot', 'two-with-sled']);
	const { id } = await addLoad(ctx, lake, SLED);
	expect(await shown()).toEqual(['on-foot', 'two-with-sled', id]);
});

test('when the only load shown is deleted the others come back', async () => {
	const { ctx, lake, shown } = await emptyLake();
	const { id } = await addLoad(ctx, lake, SLED);
	await setShownLoads(ctx, lake, { shown: [id] });
	expect(await shown()).toEqual([id]);
	await deleteLoad(ctx, lake, id);
	expect(await shown()).toEqual(standardLoads.map(({ id }) => id));
});

test('a choice is of one lake, and a load that it does not have is refused', async () => {
	const { ctx, lake, shown } = await emptyLake();
	const other = (await inventedLake(ctx, { name: 'Other Lake' })).id;
	await setShownLoads(ctx, other, { shown: ['car'] });
	expect(await shown()).toHaveLength(standardLoads.length);
	const refused = setShownLoads(ctx, lake, { shown: ['on-foot', 'tank'] });
	await expect(refused).rejects.toThrow(LoadNotFound);
	expect(await shown()).toHaveLength(standardLoads.length);
});
