/** Two people with the same page open, of whom each changes another field of it. */
import { expect, test } from 'vitest';
import { getLake } from '../../../src/lib/server/services/lakes.ts';
import { addLoad, listOwnLoads } from '../../../src/lib/server/services/own-loads.ts';
import { loadInput } from '../../../src/lib/server/services/load-input.ts';
import { routeInput } from '../../../src/lib/server/services/places/route-input.ts';
import { addRoute, getRoute } from '../../../src/lib/server/services/places/routes.ts';
import {
	addWeakSpot,
	getWeakSpot,
	weakSpotInput
} from '../../../src/lib/server/services/places/weak-spots.ts';
import { getTripNote, keepTripNote } from '../../../src/lib/server/services/places/trip-notes.ts';
import { getRemoval, saveRemoval } from '../../../src/lib/server/services/removal.ts';
import { listedLoads } from '../../../src/lib/server/services/shown-loads.ts';
import { createSite, getSite } from '../../../src/lib/server/services/sites.ts';
import { getTelling } from '../../../src/lib/server/services/telling/settings.ts';
import { lakeValues } from '../../../src/lib/ui/forms/lake-input.ts';
import { loadValues } from '../../../src/lib/ui/forms/load-input.ts';
import type { FormValues } from '../../../src/lib/ui/forms/form-input.ts';
import { SHOWN } from '../../../src/lib/ui/forms/merge-shown.ts';
import { routeValues } from '../../../src/lib/ui/forms/route-form.ts';
import { spotValues } from '../../../src/lib/ui/forms/spot-input.ts';
import { noteValues } from '../../../src/lib/ui/forms/trip-input.ts';
import { removalValues } from '../../../src/lib/ui/leaving/removal-input.ts';
import { actions as comingOff } from '../../../src/routes/lakes/[lake]/coming-off/+page.server.ts';
import { actions as lakeForm } from '../../../src/routes/lakes/[lake]/edit/+page.server.ts';
import { actions as loadForm } from '../../../src/routes/lakes/[lake]/loads/[load]/+page.server.ts';
import { actions as loadsForm } from '../../../src/routes/lakes/[lake]/loads/+page.server.ts';
import { shownValues } from '../../../src/routes/lakes/[lake]/loads/shown-values.ts';
import { actions as siteForm } from '../../../src/routes/lakes/[lake]/sites/[site]/+page.server.ts';
import { siteValues } from '../../../src/routes/lakes/[lake]/sites/read-site.ts';
import { actions as telling } from '../../../src/routes/lakes/[lake]/telling/+page.server.ts';
import { whatValues } from '../../../src/routes/lakes/[lake]/telling/what-values.ts';
import { actions as trip } from '../../../src/routes/lakes/[lake]/trip/+page.server.ts';
import { actions as spotForm } from '../../../src/routes/lakes/[lake]/weak-spots/[spot]/+page.server.ts';
import { actions as routeForm } from '../../../src/routes/lakes/[lake]/weak-spots/routes/[route]/+page.server.ts';
import { fieldsOf, formEvent, outcomeOf } from '../../support/form-event.ts';
import { freshContext, inventedLake } from '../../support/fresh-context.ts';

const UNITS = { measure: 'metric', mass: 'kg' } as const;
type Action = Parameters<typeof outcomeOf>[0];

async function lake() {
	const context = await freshContext();
	const { id } = await inventedLake(context);
	return { context, id };
}

/** Sends forms of one page, each as it was shown with some fields changed. */
function pageOf(
	shown: FormValues,
	send: { context: Awaited<ReturnType<typeof freshContext>>; params: Record<string, string> },
	query = ''
) {
	const [of, values] = [JSON.stringify({ units: UNITS, values: shown }), shown];
	return (action: Action, change: FormValues, without: string[] = []) => {
		const fields: FormValues = { ...values, ...change, [SHOWN]: of };
		for (const name of without) delete fields[name];
		return outcomeOf(action, formEvent({ ...send, fields, query }));
	};
}

test('of a load neither the heavier mass nor the other field is lost', async () => {
	const { context, id } = await lake();
	const input = loadInput.parse({ name: 'Pickup', mass_kg: 2267.96185 });
	const { id: load } = await addLoad(context, id, input);
	const [before] = await listOwnLoads(context, id);
	if (!before) throw new Error('no load');
	const send = pageOf(loadValues(before, UNITS), { context, params: { lake: id, load } });
	expect((await send(loadForm.default, { mass_kg: '4000', current: 'yes' })).status).toBe(303);
	expect((await send(loadForm.default, { name: 'Old pickup' })).status).toBe(303);
	const read = async () => (await listOwnLoads(context, id))[0];
	expect(await read()).toMatchObject({ name: 'Old pickup', mass_kg: 4000, current: true });
	const asked = await send(loadForm.default, { mass_kg: '3000' });
	expect(asked.status).toBe(400);
	expect(fieldsOf(asked)).toEqual(['mass_kg']);
	expect(asked.data.issues?.[0]?.message).toContain('4000 kg');
	expect(asked.data.values).toMatchObject({ mass_kg: '3000', name: 'Old pickup', current: 'yes' });
	expect(await read()).toMatchObject({ mass_kg: 4000 });
});

test('of two sent at the same moment none is lost', async () => {
	const { context, id } = await lake();
	const input = loadInput.parse({ name: 'Pickup', mass_kg: 2000 });
	const { id: load } = await addLoad(context, id, input);
	const [before] = await listOwnLoads(context, id);
	if (!before) throw new Error('no load');
	const send = pageOf(loadValues(before, UNITS), { context, params: { lake: id, load } });
	await Promise.all([
		send(loadForm.default, { mass_kg: '4000' }),
		send(loadForm.default, { count: '2' }),
		send(loadForm.default, { parked_h: '5' })
	]);
	expect((await listOwnLoads(context, id))[0]).toMatchObject({
		mass_kg: 4000,
		count: 2,
		parked_h: 5
	});
});

test('of a lake neither the river nor the depth is lost', async () => {
	const { context, id } = await lake();
	const shown = lakeValues(await getLake(context, id), UNITS);
	const send = pageOf(shown, { context, params: { lake: id } });
	await send(lakeForm['store'], { water: 'river' });
	await send(lakeForm['store'], { meanDepth_m: '4' });
	expect(await getLake(context, id)).toMatchObject({ water: 'river', meanDepth_m: 4 });
});

test('of a weak spot the kind and the position of another stand', async () => {
	const { context, id } = await lake();
	const made = await addWeakSpot(
		context,
		id,
		weakSpotInput.parse({ name: 'Point', kind: 'rocks', latitude: 61.2, longitude: 25.1 })
	);
	if (made.status !== 'stored') throw new Error(made.status);
	const params = { lake: id, spot: made.spot.id };
	const send = pageOf(spotValues(made.spot), { context, params });
	await send(spotForm.default, { kind: 'current', latitude: '61.21' });
	await send(spotForm.default, { remark: 'by the buoy' });
	const read = () => getWeakSpot(context, id, made.spot.id);
	expect(await read()).toMatchObject({
		kind: 'current',
		remark: 'by the buoy',
		position: { latitude: 61.21, longitude: 25.1 }
	});
	const asked = await send(spotForm.default, { kind: 'crack', longitude: '25.2' });
	expect(fieldsOf(asked).toSorted()).toEqual(['kind', 'latitude']);
	expect(asked.data.issues?.map(({ message }) => message).join(' ')).toContain('Current');
});

test('a point that another has put into a route is neither lost nor mixed with others', async () => {
	const { context, id } = await lake();
	const points = ['Landing', 'Point', 'Far shore'].map((name) => ({ name, leg_m: 300 }));
	const made = await addRoute(context, id, routeInput.parse({ name: 'Over', points }));
	if (made.status !== 'stored') throw new Error(made.status);
	const params = { lake: id, route: made.route.id };
	const shown = routeValues(made.route, UNITS);
	const send = pageOf(shown, { context, params });
	const narrows = {
		'points.3.order': '1.5',
		'points.3.spot': 'plain',
		'points.3.name': 'Narrows',
		'points.3.site': 'main'
	};
	expect((await send(routeForm['change'], narrows)).status).toBe(303);
	// An empty row comes with its number and a site.
	const idle = { 'points.3.order': '4', 'points.3.site': 'main' };
	expect((await send(routeForm['change'], { ...idle, name: 'Across' })).status).toBe(303);
	const read = async () => {
		const route = await getRoute(context, id, made.route.id);
		return { name: route.name, points: route.points.map(({ name }) => name) };
	};
	const whole = ['Landing', 'Narrows', 'Point', 'Far shore'];
	expect(await read()).toEqual({ name: 'Across', points: whole });
	const asked = await send(routeForm['change'], { 'points.1.name': 'Cape' });
	expect(fieldsOf(asked)).toEqual(['points.0.spot']);
	expect(asked.data.issues?.[0]?.message).toContain(whole.join(', then '));
	expect(await read()).toMatchObject({ points: whole });
});

test('a site that another has made a track is none the less when it is renamed', async () => {
	const { context, id } = await lake();
	const made = await createSite(context, id, { name: 'Road', kind: 'bay', parent: null });
	if (made.status !== 'stored') throw new Error(made.status);
	const params = { lake: id, site: made.site.id };
	// The list of sites is sent whatever the kind is.
	const send = pageOf(siteValues(made.site), { context, params });
	const asTrack = { siteKind: 'track', parent: 'main' };
	expect((await send(siteForm['store'], asTrack)).status).toBe(303);
	expect((await send(siteForm['store'], { name: 'Old road', parent: 'main' })).status).toBe(303);
	const read = () => getSite(context, id, made.site.id);
	expect(await read()).toMatchObject({ name: 'Old road', kind: 'track', parent: 'main' });
});

test('a removal date stands where another page stores days of lead', async () => {
	const { context, id } = await lake();
	const page = { context, params: { lake: id } };
	const shown = removalValues(null, [{ id: 'car', lead_d: null }]);
	const send = pageOf(shown, page, '/store&winter=2026-27');
	await saveRemoval(context, id, '2026-27', {
		removalOn: '2027-03-10',
		leads: [{ load: 'on-foot', lead_d: 2 }]
	});
	await send(comingOff['store'], { 'lead.car': '3' });
	const stored = await getRemoval(context, id, '2026-27');
	expect(stored.removalOn).toBe('2027-03-10');
	expect(stored.leads).toEqual([
		{ load: 'car', lead_d: 3 },
		{ load: 'on-foot', lead_d: 2 }
	]);
});

test('a load that was added since is still told of and shown', async () => {
	const { context, id } = await lake();
	const page = { context, params: { lake: id } };
	const told = pageOf(whatValues(await getTelling(context, id)), page);
	const ids = (await listedLoads(context, id)).map((load) => load.id);
	const shown = pageOf(shownValues(ids), page);
	const added = await addLoad(context, id, loadInput.parse({ name: 'Sled', mass_kg: 90 }));
	await told(telling['what'], { readingAfter_d: '5' });
	expect(await getTelling(context, id)).toMatchObject({
		readingAfter_d: 5,
		loads: expect.arrayContaining([added.id])
	});
	// Its boxes are of one name, and only one of them is ticked.
	await shown(loadsForm['show'], { shown: ids[0] ?? '' }, Object.keys(shownValues(ids)));
	const left = (await listedLoads(context, id)).filter(({ isShown }) => isShown);
	expect(left.map((load) => load.id)).toEqual([ids[0], added.id]);
});

test('a trip sheet forgets of what is kept only what its page showed', async () => {
	const { context, id } = await lake();
	const empty = { emergency: null, party: null, back: null, told: null };
	const page = { context, params: { lake: id } };
	const send = pageOf(noteValues(empty), page);
	const theirs = { ...empty, emergency: '112', party: 'Two of ours' };
	await keepTripNote(context, id, theirs);
	// Nothing is ticked: this sheet is of this page alone.
	const sheet = await send(trip['show'], { party: 'Just me' });
	expect(sheet).toMatchObject({ status: 200, data: { note: { party: 'Just me' } } });
	expect(sheet.data.values?.[SHOWN]).toBeUndefined();
	expect(await getTripNote(context, id)).toEqual(theirs);
	const mine = { party: 'Just me', keepParty: 'yes' };
	const asked = await send(trip['show'], mine);
	expect(fieldsOf(asked)).toEqual(['party']);
	expect(await getTripNote(context, id)).toEqual(theirs);
	await send(trip['show'], { ...mine, 'keep.party': 'Just me' });
	expect(await getTripNote(context, id)).toEqual({ ...theirs, party: 'Just me' });
	// Who sees what is kept, and does not tick it, lets it go.
	const knowing = pageOf(noteValues({ ...theirs, party: 'Just me' }), page);
	await knowing(trip['show'], { keepEmergency: 'yes' });
	expect(await getTripNote(context, id)).toEqual({ ...empty, emergency: '112' });
});
