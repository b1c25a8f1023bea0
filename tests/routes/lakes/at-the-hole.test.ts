import { expect, test } from 'vitest';
import { addWeakSpot, weakSpotInput } from '../../../src/lib/server/services/places/weak-spots.ts';
import { getPosition } from '../../../src/lib/server/services/reading-positions.ts';
import { listReadings } from '../../../src/lib/server/services/readings.ts';
import { actions, load } from '../../../src/routes/lakes/[lake]/at-the-hole/+page.server.ts';
import * as edit from '../../../src/routes/lakes/[lake]/readings/[reading]/+page.server.ts';
import { fieldsOf, formEvent, outcomeOf } from '../../support/form-event.ts';
import { freshContext, inventedLake } from '../../support/fresh-context.ts';
import { lastText } from '../../../src/routes/lakes/[lake]/at-the-hole/from-before.ts';

/** As the form sends it when only the whole and the snow were typed. */
const TYPED = {
	on: '2027-02-10',
	place: '',
	otherPlace: 'Off the mole',
	kind: 'measured',
	core: '',
	by: '',
	remark: '',
	seen: '0',
	latitude: '',
	longitude: '',
	'holes.0.total_cm': '24',
	'holes.0.clear_cm': '',
	'holes.0.white_cm': '',
	'holes.0.snow_cm': '6',
	'holes.0.slush_cm': '',
	'holes.0.freeboard_cm': ''
};

async function atTheHole() {
	const context = await freshContext();
	const { id } = await inventedLake(context);
	const params = { lake: id };
	const send = (fields: Record<string, string> = {}) =>
		outcomeOf(actions['default'], formEvent({ context, params, fields: { ...TYPED, ...fields } }));
	return {
		context,
		id,
		send,
		read: () => listReadings(context, id, 'main'),
		page: (query = '') => load(formEvent({ context, params, query })) as Promise<Loaded>
	};
}

type Loaded = Exclude<Awaited<ReturnType<typeof load>>, void>;

test('a hole is stored, shown and offered as the next one’s place and last values', async () => {
	const { send, read, page } = await atTheHole();
	const { status, location } = await send();
	const [reading] = await read();
	expect(status).toBe(303);
	expect(location).toBe(`?stored=${reading?.id}`);
	expect(reading).toMatchObject({
		on: '2027-02-10',
		place: 'Off the mole',
		holes: [{ total_m: 0.24, snow_m: 0.06, clear_m: null }]
	});
	expect(await page(location.slice(1))).toMatchObject({
		seen: 1,
		place: 'Off the mole',
		places: ['Off the mole'],
		last: { total_m: 0.24 },
		effect: { ice: null }
	});
});

test('a place that was named before is chosen, another one typed wins', async () => {
	const { send, read } = await atTheHole();
	await send({ place: 'Landing', otherPlace: '' });
	await send({ place: 'Landing', otherPlace: 'Far shore', seen: '1' });
	expect((await read()).map(({ place }) => place)).toEqual(['Landing', 'Far shore']);
});

test('weak spots are offered by their names, each once, here and where a reading is mended', async () => {
	const { context, id, send, read, page } = await atTheHole();
	for (const name of ['Inlet', 'off the MOLE ']) {
		await addWeakSpot(context, id, weakSpotInput.parse({ name, kind: 'inletOutlet' }));
	}
	expect(await page()).toMatchObject({ places: [], otherPlaces: ['Inlet', 'off the MOLE'] });
	await send();
	expect(await page()).toMatchObject({ places: ['Off the mole'], otherPlaces: ['Inlet'] });
	const params = { lake: id, reading: (await read())[0]?.id ?? '' };
	const mending = await edit.load(formEvent({ context, params }) as never);
	expect(mending).toMatchObject({ places: expect.arrayContaining(['Inlet']) });
});

test('the phone’s position is stored when it comes, and can be forgotten', async () => {
	const { context, id, send, read } = await atTheHole();
	await send({ latitude: '47.40001', longitude: '-38.20002' });
	const [reading] = await read();
	const position = { latitude: 47.40001, longitude: -38.20002 };
	expect(await getPosition(context, id, reading?.id ?? '')).toEqual(position);
	const params = { lake: id, reading: reading?.id ?? '' };
	expect(await edit.load(formEvent({ context, params }))).toMatchObject({ position });
	await outcomeOf(edit.actions['forget'], formEvent({ context, params }));
	expect(await getPosition(context, id, params.reading)).toBeNull();
});

test.each([
	[{ 'holes.0.total_cm': '' }, ['holes.0.total_cm']],
	[{ 'holes.0.total_cm': 'x' }, ['holes.0.total_cm']],
	[{ 'holes.0.total_cm': '', 'holes.0.clear_cm': '20' }, ['holes.0.white_cm']],
	[{ 'holes.0.total_cm': '240' }, ['holes.0.total_cm']],
	[{ kind: '' }, ['kind']],
	[{ on: '2027-02-11' }, ['on']]
])('%j is refused at its field, with all that was typed', async (change, wrong) => {
	const { send, read } = await atTheHole();
	const outcome = await send(change as Record<string, string>);
	expect(outcome.status).toBe(400);
	expect(fieldsOf(outcome)).toEqual(wrong);
	expect(outcome.data.values).toEqual({ ...TYPED, ...change });
	expect(await read()).toEqual([]);
});

test('where ice broke needs no number, and says what it does', async () => {
	const { send, read, page } = await atTheHole();
	const { location } = await send({
		kind: 'wentThrough',
		'holes.0.total_cm': '',
		'holes.0.snow_cm': ''
	});
	expect(await read()).toMatchObject([{ kind: 'wentThrough', place: 'Off the mole', holes: [] }]);
	expect(await page(location.slice(1))).toMatchObject({
		seen: 1,
		last: null,
		effect: { reading: { kind: 'wentThrough' } }
	});
});

test('a reading mended from here leads back here', async () => {
	const { context, id, send, read } = await atTheHole();
	await send();
	const [reading] = await read();
	const params = { lake: id, reading: reading?.id ?? '' };
	const fields = { on: '2027-02-10', kind: 'measured', 'holes.0.total_cm': '23' };
	const query = '/store&from=hole';
	const mended = await outcomeOf(
		edit.actions['store'],
		formEvent({ context, params, fields, query })
	);
	expect(mended.location).toBe(`/lakes/${id}/at-the-hole?stored=${reading?.id}`);
});

test('what the last hole showed is told as a tape shows it, in whichever unit', () => {
	const metric = { measure: 'metric', mass: 'kg' } as const;
	const imperial = { measure: 'imperial', mass: 'lb' } as const;
	expect([lastText(0.04, metric), lastText(0.04, imperial)]).toEqual(['4', '1.5']);
	expect(lastText(0, imperial)).toBe('0');
	expect(lastText(null, metric)).toBe('');
});
