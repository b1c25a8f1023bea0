import { expect, test } from 'vitest';
import { getLake, listLakes } from '../../../src/lib/server/services/lakes.ts';
import { actions as deleted } from '../../../src/routes/lakes/[lake]/edit/deleted/+page.server.ts';
import { actions as edit } from '../../../src/routes/lakes/[lake]/edit/+page.server.ts';
import { actions as create } from '../../../src/routes/lakes/new/+page.server.ts';
import { fieldsOf, formEvent, outcomeOf } from '../../support/form-event.ts';
import { freshContext, inventedLake } from '../../support/fresh-context.ts';

const TYPED = { name: 'Pinder Lake', latitude: '47.4', longitude: '-38.2', water: 'lake' };

test('a lake is made from its name and a pasted pair, and leads on to its freeze-up', async () => {
	const context = await freshContext();
	const fields = { ...TYPED, latitude: '47°24′N 38°12′W', longitude: '' };
	const outcome = await outcomeOf(create.default, formEvent({ context, fields }));
	expect(outcome).toMatchObject({ status: 303, location: '/lakes/pinder-lake/winter?made' });
	expect(await getLake(context, 'pinder-lake')).toMatchObject({
		name: 'Pinder Lake',
		latitude: 47.4,
		longitude: -38.2,
		area_km2: null,
		meanDepth_m: null,
		elevation_m: null,
		chartSet: 'strict'
	});
});

test('acres and feet become km² and metres', async () => {
	const context = await freshContext();
	const sizes = { area_acre: '640', meanDepth_ft: '20', elevation_ft: '1,000.5' };
	const bad = await outcomeOf(
		create.default,
		formEvent({ context, fields: { ...TYPED, ...sizes } })
	);
	expect(fieldsOf(bad)).toEqual(['elevation_ft']);
	const fields = { ...TYPED, ...sizes, elevation_ft: '1000' };
	await outcomeOf(create.default, formEvent({ context, fields }));
	const lake = await getLake(context, 'pinder-lake');
	// A square mile is 640 acres and 2.589988110336 km², exact by definition.
	expect(lake.area_km2).toBeCloseTo(2.58998811, 7);
	expect(lake.meanDepth_m).toBeCloseTo(6.096, 9);
	expect(lake.elevation_m).toBeCloseTo(304.8, 9);
});

test.each([
	['no name', { name: ' ' }, ['name']],
	['no position', { latitude: '', longitude: '' }, ['latitude', 'longitude']],
	['a latitude that is none', { latitude: 'north' }, ['latitude']],
	['a latitude past the pole', { latitude: '147.4' }, ['latitude']],
	['a negative area', { area_km2: '-2' }, ['area_km2']],
	['a depth in words', { meanDepth_m: 'deep' }, ['meanDepth_m']],
	['a water that is none', { water: 'sea' }, ['water']],
	['a time zone that is none', { timeZone: 'Middle/Nowhere' }, ['timeZone']]
])('%s is refused at its field and keeps what was typed', async (_, change, wrong) => {
	const context = await freshContext();
	const fields: Record<string, string> = { ...TYPED, remark: 'kept', ...change };
	const outcome = await outcomeOf(create.default, formEvent({ context, fields }));
	expect(outcome.status).toBe(400);
	expect(fieldsOf(outcome)).toEqual(wrong);
	expect(outcome.data.values).toEqual(fields);
	expect(await listLakes(context)).toEqual([]);
});

test('a lake is changed, and what is left empty becomes unknown', async () => {
	const context = await freshContext();
	const { id } = await inventedLake(context);
	const fields = {
		...TYPED,
		name: 'Pinder Water',
		area_km2: '',
		meanDepth_m: '6',
		water: 'reservoir'
	};
	const outcome = await outcomeOf(
		edit['store'],
		formEvent({ context, params: { lake: id }, fields })
	);
	expect(outcome.status).toBe(303);
	expect(await getLake(context, id)).toMatchObject({
		name: 'Pinder Water',
		area_km2: null,
		meanDepth_m: 6,
		water: 'reservoir'
	});
});

test('deleting asks to be confirmed, and is undone by its own page', async () => {
	const context = await freshContext();
	const { id } = await inventedLake(context);
	const params = { lake: id };
	const unsure = await outcomeOf(edit['delete'], formEvent({ context, params }));
	expect([unsure.status, fieldsOf(unsure)]).toEqual([400, ['sure']]);
	expect(await listLakes(context)).toHaveLength(1);
	const sure = await outcomeOf(
		edit['delete'],
		formEvent({ context, params, fields: { sure: 'yes' } })
	);
	expect(sure.location).toBe(`/lakes/${id}/edit/deleted`);
	expect(await listLakes(context)).toEqual([]);
	const undone = await outcomeOf(deleted.default, formEvent({ context, params }));
	expect(undone.location).toBe(`/lakes/${id}`);
	expect(await listLakes(context)).toHaveLength(1);
});

test('a lake that is not there is a 404 with its id', async () => {
	const context = await freshContext();
	const lost = outcomeOf(edit['store'], formEvent({ context, params: { lake: 'nowhere' } }));
	await expect(lost).rejects.toMatchObject({
		status: 404,
		body: { message: 'No lake "nowhere".' }
	});
});
