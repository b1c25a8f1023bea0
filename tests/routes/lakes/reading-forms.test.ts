import { expect, test } from 'vitest';
import {
	addReadings,
	getReading,
	listReadings
} from '../../../src/lib/server/services/readings.ts';
import { readingInput } from '../../../src/lib/server/services/reading-input.ts';
import {
	actions as one,
	load as loadOne
} from '../../../src/routes/lakes/[lake]/readings/[reading]/+page.server.ts';
import { actions, load } from '../../../src/routes/lakes/[lake]/readings/+page.server.ts';
import { GET } from '../../../src/routes/lakes/[lake]/readings/table.csv/+server.ts';
import { fieldsOf, formEvent, outcomeOf } from '../../support/form-event.ts';
import { freshContext, inventedLake } from '../../support/fresh-context.ts';

const TYPED = {
	on: '2027-01-12',
	place: 'narrow bay',
	kind: 'measured',
	'holes.0.total_cm': '29,5',
	'holes.0.snow_cm': '4',
	core: 'sound',
	by: 'M.',
	secondHand: 'yes',
	remark: 'grey sky'
};

async function lakeWithReading() {
	const context = await freshContext();
	const { id } = await inventedLake(context);
	const reading = readingInput.parse({
		on: '2027-01-05',
		place: 'bay',
		kind: 'measured',
		holes: [{ total_m: 0.2337 }]
	});
	const [readingId = ''] = await addReadings(context, id, 'main', [reading]);
	return { context, params: { lake: id, reading: readingId } };
}

test('a reading is stored and shown first in its winter', async () => {
	const { context, params } = await lakeWithReading();
	const outcome = await outcomeOf(actions['add'], formEvent({ context, params, fields: TYPED }));
	expect(outcome.status).toBe(303);
	expect(outcome.location).toMatch(/^\?winter=2026-27&stored=r-/);
	const data = await load(formEvent({ context, params, query: 'winter=2026-27' }));
	expect(data).toMatchObject({
		winter: '2026-27',
		places: ['bay', 'narrow bay'],
		readings: [
			{
				on: '2027-01-12',
				place: 'narrow bay',
				holes: [{ total_m: 0.295, snow_m: 0.04, clear_m: null }],
				core: 'sound',
				by: 'M.',
				secondHand: true,
				remark: 'grey sky'
			},
			{ on: '2027-01-05' }
		]
	});
});

test('no day, no ice and a core that is none are said in one round', async () => {
	const { context, params } = await lakeWithReading();
	const fields = { ...TYPED, on: '', 'holes.0.total_cm': '', 'holes.0.snow_cm': '', core: 'x' };
	const outcome = await outcomeOf(actions['add'], formEvent({ context, params, fields }));
	expect(fieldsOf(outcome)).toEqual(['on', 'holes.0.total_cm', 'core']);
});

test('inches are stored as metres, whatever the cookie says by then', async () => {
	const { context, params } = await lakeWithReading();
	const { 'holes.0.total_cm': _, 'holes.0.snow_cm': __, ...rest } = TYPED;
	const fields = { ...rest, 'holes.0.clear_in': '10', 'holes.0.white_in': '2' };
	const units = { measure: 'metric', mass: 'kg' } as const;
	await outcomeOf(actions['add'], formEvent({ context, params, fields, units }));
	const readings = await listReadings(context, params.lake, 'main');
	expect(readings[1]?.holes[0]).toMatchObject({ clear_m: 0.254, white_m: 0.0508, total_m: null });
});

test.each([
	['a thickness in words', { 'holes.0.total_cm': 'a foot' }, 'holes.0.total_cm'],
	['a thickness below nothing', { 'holes.0.total_cm': '-3' }, 'holes.0.total_cm'],
	['a thickness of seven metres', { 'holes.0.total_cm': '700' }, 'holes.0.total_cm'],
	['no hole', { 'holes.0.total_cm': '', 'holes.0.snow_cm': '' }, 'holes.0.total_cm'],
	['a day to come', { on: '2027-02-11' }, 'on'],
	['no day', { on: '' }, 'on'],
	['a kind that is none', { kind: 'felt' }, 'kind'],
	['a core that is none', { core: 'blue' }, 'core'],
	['a place of 300 letters', { place: 'x'.repeat(300) }, 'place']
])('%s is refused at its field and keeps what was typed', async (_, change, field) => {
	const { context, params } = await lakeWithReading();
	const fields: Record<string, string> = { ...TYPED, ...change };
	const outcome = await outcomeOf(actions['add'], formEvent({ context, params, fields }));
	expect(outcome.status).toBe(400);
	expect(fieldsOf(outcome)).toContain(field);
	expect(outcome.data.values).toEqual(fields);
	expect(await listReadings(context, params.lake, 'main')).toHaveLength(1);
});

test('250 cm are asked about, and stored once the box is ticked', async () => {
	const { context, params } = await lakeWithReading();
	const fields = { ...TYPED, 'holes.0.total_cm': '250' };
	const asked = await outcomeOf(actions['add'], formEvent({ context, params, fields }));
	expect(asked.data.issues).toEqual([
		expect.objectContaining({ field: 'holes.0.total_cm', keep: 'It is 250 cm' })
	]);
	const sure = { ...fields, 'keep.holes.0.total_cm': '250' };
	expect(
		(await outcomeOf(actions['add'], formEvent({ context, params, fields: sure }))).status
	).toBe(303);
});

test('another hole without script comes back with all that was typed', async () => {
	const { context, params } = await lakeWithReading();
	const { status, data } = await outcomeOf(
		actions['hole'],
		formEvent({ context, params, fields: TYPED })
	);
	expect(status).toBe(200);
	expect(data).toEqual({ values: { ...TYPED, 'holes.1.total_cm': '' }, issues: [] });
});

test('a changed remark leaves the thickness as it was, in inches too', async () => {
	const { context, params } = await lakeWithReading();
	const units = { measure: 'imperial', mass: 'lb' } as const;
	const fields = {
		on: '2027-01-05',
		kind: 'measured',
		place: 'bay',
		'holes.0.total_in': '9.201',
		remark: 'windy'
	};
	const outcome = await outcomeOf(one['store'], formEvent({ context, params, fields, units }));
	expect(outcome.location).toContain('/readings?winter=2026-27&stored=');
	const reading = await getReading(context, params.lake, params.reading);
	expect(reading).toMatchObject({ remark: 'windy', holes: [{ total_m: 0.2337 }] });
});

test('a change that cannot be stands beside its field and changes nothing', async () => {
	const { context, params } = await lakeWithReading();
	const fields = { on: '2027-01-05', kind: 'measured', 'holes.0.total_cm': 'thick' };
	const outcome = await outcomeOf(one['store'], formEvent({ context, params, fields }));
	expect([outcome.status, fieldsOf(outcome)]).toEqual([400, ['holes.0.total_cm']]);
	expect(await loadOne(formEvent({ context, params }))).toMatchObject({
		reading: { holes: [{ total_m: 0.2337 }] }
	});
});

test('a deleted reading is gone until it is undone', async () => {
	const { context, params } = await lakeWithReading();
	const fields = { id: params.reading };
	const gone = await outcomeOf(
		actions['delete'],
		formEvent({ context, params, fields, query: '/delete&winter=2026-27' })
	);
	expect(gone.location).toBe(`?winter=2026-27&deleted=${params.reading}`);
	expect(await listReadings(context, params.lake, 'main')).toEqual([]);
	const back = await outcomeOf(actions['restore'], formEvent({ context, params, fields }));
	expect(back.location).toBe('?winter=2026-27');
	expect(await listReadings(context, params.lake, 'main')).toHaveLength(1);
});

test('the table that goes out comes in again', async () => {
	const { context, params } = await lakeWithReading();
	const csv = await (await GET(formEvent({ context, params }))).text();
	const other = await inventedLake(context);
	const file = new File([csv], 'readings.csv', { type: 'text/csv' });
	const event = formEvent({ context, params: { lake: other.id }, fields: { file } });
	expect(await outcomeOf(actions['upload'], event)).toMatchObject({
		status: 303,
		location: '?uploaded=1'
	});
	const [copy] = await listReadings(context, other.id, 'main');
	expect(copy?.holes[0]?.total_m).toBeCloseTo(0.2337, 5);
});

test('a table with a bad line is refused whole, with the line', async () => {
	const { context, params } = await lakeWithReading();
	const file = new File(['on,total_cm\n2027-01-07,24\n2027-01-08,much\n'], 'r.csv');
	const outcome = await outcomeOf(
		actions['upload'],
		formEvent({ context, params, fields: { file } })
	);
	expect(outcome.status).toBe(400);
	expect(outcome.data['report']).toMatchObject({ name: 'r.csv', problems: [{ line: 3 }] });
	expect(await listReadings(context, params.lake, 'main')).toHaveLength(1);
});

test('a form without a file says so', async () => {
	const { context, params } = await lakeWithReading();
	const outcome = await outcomeOf(actions['upload'], formEvent({ context, params }));
	expect(outcome.status).toBe(400);
	expect(outcome.data['report']).toMatchObject({ problems: [{ line: 0 }] });
});
