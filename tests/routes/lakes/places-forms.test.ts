import { expect, test } from 'vitest';
import { addReadings } from '../../../src/lib/server/services/readings.ts';
import { readingInput } from '../../../src/lib/server/services/reading-input.ts';
import { getTripNote } from '../../../src/lib/server/services/places/trip-notes.ts';
import { listRoutes } from '../../../src/lib/server/services/places/routes.ts';
import { listWeakSpots } from '../../../src/lib/server/services/places/weak-spots.ts';
import { actions as trip } from '../../../src/routes/lakes/[lake]/trip/+page.server.ts';
import { actions } from '../../../src/routes/lakes/[lake]/weak-spots/+page.server.ts';
import { actions as one } from '../../../src/routes/lakes/[lake]/weak-spots/[spot]/+page.server.ts';
import { actions as newRoute } from '../../../src/routes/lakes/[lake]/weak-spots/routes/new/+page.server.ts';
import { fieldsOf, formEvent, outcomeOf } from '../../support/form-event.ts';
import { freshContext, inventedLake } from '../../support/fresh-context.ts';

const TYPED = {
	name: 'Mill inlet',
	kind: 'inletOutlet',
	latitude: '47°24′N 38°12′W',
	longitude: '',
	checkedOn: '2027-02-09',
	remark: ''
};

async function lake() {
	const context = await freshContext();
	const { id } = await inventedLake(context);
	return { context, params: { lake: id } };
}

async function withSpot() {
	const at = await lake();
	await outcomeOf(actions['add'], formEvent({ ...at, fields: TYPED }));
	const [spot] = await listWeakSpots(at.context, at.params.lake);
	return { ...at, id: spot?.id ?? '' };
}

test('a weak spot is stored as typed', async () => {
	const { context, params } = await withSpot();
	const [spot] = await listWeakSpots(context, params.lake);
	expect(spot).toMatchObject({ name: 'Mill inlet', kind: 'inletOutlet', checkedOn: '2027-02-09' });
	expect(spot?.position?.latitude).toBeCloseTo(47.4, 9);
	expect(spot?.position?.longitude).toBeCloseTo(-38.2, 9);
});

test.each([
	['no name', { name: '' }, 'name'],
	['no kind', { kind: '' }, 'kind'],
	['half a position', { latitude: '47.4' }, 'longitude'],
	['a day to come', { checkedOn: '2027-03-01' }, 'checkedOn']
])('%s is refused at its field and keeps what was typed', async (_, change, field) => {
	const at = await lake();
	const outcome = await outcomeOf(
		actions['add'],
		formEvent({ ...at, fields: { ...TYPED, ...change } })
	);
	expect([outcome.status, fieldsOf(outcome)]).toEqual([400, [field]]);
	expect(outcome.data.values?.['name']).toBe({ ...TYPED, ...change }.name);
	expect(await listWeakSpots(at.context, at.params.lake)).toEqual([]);
});

test('name and kind are asked for at once, in words of people', async () => {
	const at = await lake();
	const fields = { ...TYPED, name: '', kind: '' };
	const { data } = await outcomeOf(actions['add'], formEvent({ ...at, fields }));
	expect(data.issues?.map(({ message }) => message)).toEqual([
		'Give it a name: yours, the same as in your readings.',
		'Choose what makes it weak.'
	]);
});

test('a name that is taken is refused in words', async () => {
	const at = await withSpot();
	const outcome = await outcomeOf(actions['add'], formEvent({ ...at, fields: TYPED }));
	expect(outcome.data.issues?.[0]?.message).toContain('is on the list already');
});

test('a look today is stored, and the rest stays', async () => {
	const at = await withSpot();
	const [before] = await listWeakSpots(at.context, at.params.lake);
	await outcomeOf(actions['checked'], formEvent({ ...at, fields: { id: at.id } }));
	const [after] = await listWeakSpots(at.context, at.params.lake);
	expect(after).toEqual({ ...before, checkedOn: '2027-02-10' });
});

test('it is changed, taken off and brought back', async () => {
	const at = await withSpot();
	const params = { ...at.params, spot: at.id };
	const fields = { ...TYPED, name: 'Brook', latitude: '', checkedOn: '' };
	expect((await outcomeOf(one.default, formEvent({ ...at, params, fields }))).status).toBe(303);
	const gone = await outcomeOf(actions['delete'], formEvent({ ...at, fields: { id: at.id } }));
	expect(gone.location).toBe(`?deleted=${at.id}`);
	await outcomeOf(actions['restore'], formEvent({ ...at, fields: { id: at.id } }));
	const [spot] = await listWeakSpots(at.context, at.params.lake);
	expect(spot).toMatchObject({ name: 'Brook', position: null, checkedOn: null });
});

test('where the ice broke, the place of the reading comes onto the list', async () => {
	const at = await lake();
	const broke = readingInput.parse({
		on: '2027-02-01',
		kind: 'wentThrough',
		place: 'Reef',
		holes: []
	});
	const [id = ''] = await addReadings(at.context, at.params.lake, 'main', [broke]);
	await outcomeOf(actions['broke'], formEvent({ ...at, fields: { id } }));
	expect(await listWeakSpots(at.context, at.params.lake)).toMatchObject([
		{ name: 'Reef', kind: 'brokeThrough', checkedOn: '2027-02-01' }
	]);
});

test('a route is made over a weak spot, and one that is gone is refused', async () => {
	const at = await withSpot();
	const fields = {
		name: 'Out',
		startsAtShore: 'yes',
		'points.0.spot': at.id,
		'points.1.spot': 'plain',
		'points.1.name': 'Shelter',
		'points.1.leg_m': '250'
	};
	const made = await outcomeOf(newRoute['add'], formEvent({ ...at, fields }));
	expect(made.status).toBe(303);
	const [route] = await listRoutes(at.context, at.params.lake);
	expect(route?.points.map(({ name, leg_m }) => [name, leg_m])).toEqual([
		['Mill inlet', null],
		['Shelter', 250]
	]);
	await outcomeOf(actions['delete'], formEvent({ ...at, fields: { id: at.id } }));
	const refused = await outcomeOf(newRoute['add'], formEvent({ ...at, fields }));
	expect(refused.data.issues?.[0]?.message).toContain('Point 1');
});

test('a GPX file is taken in, and one with a document type is refused in words', async () => {
	const at = await lake();
	const send = (text: string) =>
		outcomeOf(
			actions['gpx'],
			formEvent({ ...at, fields: { file: new File([text], 'a.gpx'), waypointsAs: 'rocks' } })
		);
	const gpx = '<gpx version="1.1"><wpt lat="47.4" lon="-38.2"><name>Reef</name></wpt></gpx>';
	expect((await send(gpx)).data['gpx']).toMatchObject({ status: 'stored', spots: 1 });
	const refused = await send(`<!DOCTYPE gpx>${gpx}`);
	expect([refused.status, refused.data['gpx']]).toMatchObject([400, { status: 'refused' }]);
	expect((await send('')).status).toBe(400);
});

const PEOPLE = { party: 'two of us', back: 'at five', told: 'a friend', emergency: '000' };

test('what is typed on a trip sheet comes back, and nothing of it is kept without a tick', async () => {
	const at = await lake();
	const shown = await outcomeOf(trip['show'], formEvent({ ...at, fields: PEOPLE }));
	expect(shown.data['note']).toEqual(PEOPLE);
	expect(Object.values(await getTripNote(at.context, at.params.lake))).toEqual([
		null,
		null,
		null,
		null
	]);
});

test('each tick keeps its own, and taking it away forgets', async () => {
	const at = await lake();
	const show = (ticks: Record<string, string>) =>
		outcomeOf(trip['show'], formEvent({ ...at, fields: { ...PEOPLE, ...ticks } }));
	await show({ keepEmergency: 'yes' });
	expect(await getTripNote(at.context, at.params.lake)).toMatchObject({
		emergency: '000',
		party: null
	});
	await show({ keepParty: 'yes' });
	expect(await getTripNote(at.context, at.params.lake)).toEqual({ ...PEOPLE, emergency: null });
	await show({});
	expect(await getTripNote(at.context, at.params.lake)).toMatchObject({ party: null, told: null });
});

test('more than the sheet has room for is refused at its field', async () => {
	const at = await lake();
	const fields = { ...PEOPLE, party: 'x'.repeat(301) };
	const outcome = await outcomeOf(trip['show'], formEvent({ ...at, fields }));
	expect([outcome.status, fieldsOf(outcome)]).toEqual([400, ['party']]);
});
