import { expect, test } from 'vitest';
import { getLake } from '../../../src/lib/server/services/lakes.ts';
import { listOwnLoads } from '../../../src/lib/server/services/own-loads.ts';
import { listedLoads } from '../../../src/lib/server/services/shown-loads.ts';
import { actions as one } from '../../../src/routes/lakes/[lake]/loads/[load]/+page.server.ts';
import { actions } from '../../../src/routes/lakes/[lake]/loads/+page.server.ts';
import { fieldsOf, formEvent, outcomeOf } from '../../support/form-event.ts';
import { freshContext, inventedLake } from '../../support/fresh-context.ts';

const TYPED = {
	name: 'Old pickup',
	mass_lb: '5000',
	use: 'lightTruck',
	parked_h: '3,5',
	wetCracks: '1',
	current: 'yes'
};

async function lake() {
	const context = await freshContext();
	const { id } = await inventedLake(context);
	return { context, params: { lake: id } };
}

test('a load in pounds is stored in kilograms with its circumstances', async () => {
	const at = await lake();
	const outcome = await outcomeOf(actions['add'], formEvent({ ...at, fields: TYPED }));
	expect(outcome.status).toBe(303);
	const [load] = await listOwnLoads(at.context, at.params.lake);
	expect(load).toMatchObject({
		name: 'Old pickup',
		use: 'lightTruck',
		parked_h: 3.5,
		wetCracks: 1,
		current: true,
		group: false
	});
	// 5000 lb by the international pound of 0.45359237 kg.
	expect(load?.mass_kg).toBeCloseTo(2267.96185, 6);
});

test.each([
	['no name', { name: '' }, 'name'],
	['no mass', { mass_lb: '' }, 'mass_lb'],
	['a mass that reads two ways', { mass_lb: '5,000' }, 'mass_lb'],
	['a mass of nothing', { mass_lb: '0' }, 'mass_lb'],
	['a row that is none', { use: 'tank' }, 'use'],
	['three cracks', { wetCracks: '3' }, 'wetCracks'],
	['a distance behind without anything there', { trailerApart_ft: '60' }, 'trailerApart_ft'],
	['half a load', { count: '1.5' }, 'count'],
	['a spacing below nothing', { spacing_ft: '-3' }, 'spacing_ft'],
	['a stay below nothing', { parked_h: '-1' }, 'parked_h']
])('%s is refused at its field and keeps what was typed', async (_, change, field) => {
	const at = await lake();
	const fields: Record<string, string> = { ...TYPED, ...change };
	const outcome = await outcomeOf(actions['add'], formEvent({ ...at, fields }));
	expect(outcome.status).toBe(400);
	expect(fieldsOf(outcome)).toEqual([field]);
	expect(outcome.data.values).toEqual(fields);
	expect(await listOwnLoads(at.context, at.params.lake)).toEqual([]);
});

test('all that is wrong with a load is said in one round', async () => {
	const at = await lake();
	const fields = { ...TYPED, name: '', mass_lb: 'two', use: 'tank', wetCracks: '3', count: '1.5' };
	const outcome = await outcomeOf(actions['add'], formEvent({ ...at, fields }));
	expect(fieldsOf(outcome)).toEqual(['name', 'mass_lb', 'use', 'wetCracks', 'count']);
});

test('a load is changed, its mass kept to the last digit where it was left alone', async () => {
	const at = await lake();
	await outcomeOf(actions['add'], formEvent({ ...at, fields: TYPED }));
	const [before] = await listOwnLoads(at.context, at.params.lake);
	const params = { ...at.params, load: before?.id ?? '' };
	const fields = { name: 'Pickup', mass_kg: '2267.962', use: '', parked_h: '0', wetCracks: '0' };
	await outcomeOf(one.default, formEvent({ context: at.context, params, fields }));
	const [after] = await listOwnLoads(at.context, at.params.lake);
	expect(after).toEqual({
		id: before?.id,
		mass_kg: before?.mass_kg,
		name: 'Pickup',
		use: null,
		parked_h: 0,
		wetCracks: 0,
		current: false,
		group: false,
		trailer: null,
		count: 1,
		spacing_m: null
	});
});

test('a trailer and the others that go with it are stored in metres and kilograms', async () => {
	const at = await lake();
	const fields = { ...TYPED, trailer_lb: '2000', trailerApart_ft: '100', count: '2' };
	await outcomeOf(actions['add'], formEvent({ ...at, fields: { ...fields, spacing_ft: '150' } }));
	const [load] = await listOwnLoads(at.context, at.params.lake);
	// 0.45359237 kg to the pound, 0.3048 m to the foot.
	expect(load?.trailer?.mass_kg).toBeCloseTo(907.18474, 6);
	expect(load?.trailer?.apart_m).toBeCloseTo(30.48, 9);
	expect(load).toMatchObject({ count: 2 });
	expect(load?.spacing_m).toBeCloseTo(45.72, 9);
});

test('a mass of nothing behind it is no trailer', async () => {
	const at = await lake();
	const fields = { ...TYPED, trailer_lb: '0', count: '' };
	await outcomeOf(actions['add'], formEvent({ ...at, fields }));
	expect(await listOwnLoads(at.context, at.params.lake)).toMatchObject([
		{ trailer: null, count: 1, spacing_m: null }
	]);
});

test('the loads that the pages show are chosen by ticks, one at least', async () => {
	const at = await lake();
	const show = (fields: Record<string, string>) =>
		outcomeOf(actions['show'], formEvent({ ...at, fields }));
	expect((await show({ shown: 'on-foot' })).location).toBe('?stored=shown');
	const listed = await listedLoads(at.context, at.params.lake);
	expect(listed.filter(({ isShown }) => isShown).map(({ id }) => id)).toEqual(['on-foot']);
	const refused = await show({});
	expect([refused.status, fieldsOf(refused)]).toEqual([400, ['shown']]);
});

test('a deleted load comes back by undo', async () => {
	const at = await lake();
	await outcomeOf(actions['add'], formEvent({ ...at, fields: TYPED }));
	const [load] = await listOwnLoads(at.context, at.params.lake);
	const fields = { id: load?.id ?? '' };
	const gone = await outcomeOf(actions['delete'], formEvent({ ...at, fields }));
	expect(gone.location).toBe(`?deleted=${load?.id}`);
	expect(await listOwnLoads(at.context, at.params.lake)).toEqual([]);
	await outcomeOf(actions['restore'], formEvent({ ...at, fields }));
	expect(await listOwnLoads(at.context, at.params.lake)).toEqual([load]);
});

test('the chart set is chosen, and nothing else passes for one', async () => {
	const at = await lake();
	const choose = (chartSet: string) =>
		outcomeOf(actions['chartSet'], formEvent({ ...at, fields: { chartSet } }));
	expect((await choose('common')).status).toBe(303);
	expect((await getLake(at.context, at.params.lake)).chartSet).toBe('common');
	const refused = await choose('loose');
	expect([refused.status, fieldsOf(refused)]).toEqual([400, ['chartSet']]);
});

test('a load of another lake is not found', async () => {
	const at = await lake();
	const params = { ...at.params, load: 'own-elsewhere' };
	const lost = outcomeOf(one.default, formEvent({ context: at.context, params }));
	await expect(lost).rejects.toMatchObject({ status: 404 });
});
