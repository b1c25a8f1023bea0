import { expect, test } from 'vitest';
import { newSite } from '../../../../src/lib/server/services/site-input.ts';
import { createSite, deleteSite } from '../../../../src/lib/server/services/sites.ts';
import { lakeView } from '../../../../src/lib/server/services/lake-view.ts';
import { addReadings, listReadings } from '../../../../src/lib/server/services/readings.ts';
import { readingInput } from '../../../../src/lib/server/services/reading-input.ts';
import {
	placesFromGpx,
	placesToGpx
} from '../../../../src/lib/server/services/places/places-gpx.ts';
import { placesView } from '../../../../src/lib/server/services/places/places-view.ts';
import { routeInput } from '../../../../src/lib/server/services/places/route-input.ts';
import {
	addRoute,
	deleteRoute,
	getRoute,
	listRoutes,
	restoreRoute,
	updateRoute
} from '../../../../src/lib/server/services/places/routes.ts';
import {
	getTripNote,
	keepTripNote,
	tripNoteInput
} from '../../../../src/lib/server/services/places/trip-notes.ts';
import {
	addWeakSpot,
	deleteWeakSpot,
	listWeakSpots,
	restoreWeakSpot,
	updateWeakSpot,
	weakSpotInput
} from '../../../../src/lib/server/services/places/weak-spots.ts';
import { drilledLake } from '../../../support/drilled-lake.ts';
import { freshContext, inventedLake } from '../../../support/fresh-context.ts';

const INLET = weakSpotInput.parse({
	name: 'Mill inlet',
	kind: 'inletOutlet',
	latitude: 47.41,
	longitude: -38.2
});

async function emptyLake() {
	const ctx = await freshContext();
	return { ctx, lake: (await inventedLake(ctx)).id };
}

async function withSpot() {
	const at = await emptyLake();
	const stored = await addWeakSpot(at.ctx, at.lake, INLET);
	if (stored.status !== 'stored') throw new Error(stored.status);
	return { ...at, spot: stored.spot };
}

const aRoute = (spot: string, changes: object = {}) =>
	routeInput.parse({
		name: 'To the point',
		points: [
			{ name: 'Landing', latitude: 47.4, longitude: -38.2 },
			{ spot },
			{ name: 'Point', leg_m: 80 }
		],
		...changes
	});

async function withRoute() {
	const at = await withSpot();
	const stored = await addRoute(at.ctx, at.lake, aRoute(at.spot.id));
	if (stored.status !== 'stored') throw new Error(stored.status);
	return { ...at, route: stored.route };
}

test('two weak spots of one name are refused, however it is written', async () => {
	const { ctx, lake, spot } = await withSpot();
	const twin = await addWeakSpot(ctx, lake, { ...INLET, name: ' mill INLET' });
	expect(twin).toEqual({ status: 'nameTaken', name: ' mill INLET' });
	expect(await listWeakSpots(ctx, lake)).toEqual([spot]);
});

test('a deleted one comes back by undo, unless its name has gone to another', async () => {
	const { ctx, lake, spot } = await withSpot();
	await deleteWeakSpot(ctx, lake, spot.id);
	expect(await listWeakSpots(ctx, lake)).toEqual([]);
	expect(await restoreWeakSpot(ctx, lake, spot.id)).toEqual({ status: 'stored', spot });
	await deleteWeakSpot(ctx, lake, spot.id);
	await addWeakSpot(ctx, lake, INLET);
	expect((await restoreWeakSpot(ctx, lake, spot.id)).status).toBe('nameTaken');
});

test('a new name goes to its readings too, and to no others', async () => {
	const { ctx, lake, spot } = await withSpot();
	const readings = ['mill inlet ', 'Mill inlet bay'].map((place) =>
		readingInput.parse({ on: '2027-02-01', kind: 'measured', place, holes: [{ total_m: 0.2 }] })
	);
	await addReadings(ctx, lake, 'main', readings);
	await updateWeakSpot(ctx, lake, spot.id, { ...INLET, name: 'Brook' });
	const places = (await listReadings(ctx, lake, 'main')).map(({ place }) => place);
	expect(places).toEqual(['Brook', 'Mill inlet bay']);
});

test('half a position is refused', () => {
	expect(weakSpotInput.safeParse({ ...INLET, longitude: null }).success).toBe(false);
	expect(weakSpotInput.safeParse({ ...INLET, latitude: 91 }).success).toBe(false);
});

test('a route keeps its order, and a change replaces it whole', async () => {
	const { ctx, lake, spot, route } = await withRoute();
	expect(route.points.map(({ name }) => name)).toEqual(['Landing', 'Mill inlet', 'Point']);
	expect(route.points[1]?.position).toEqual(spot.position);
	const points = [{ name: 'Point' }, { name: 'Landing' }];
	await updateRoute(
		ctx,
		lake,
		route.id,
		aRoute(spot.id, { name: 'Back', points, endsAtShore: true })
	);
	expect(await getRoute(ctx, lake, route.id)).toMatchObject({
		name: 'Back',
		endsAtShore: true,
		points: [{ name: 'Point' }, { name: 'Landing' }]
	});
});

test('a deleted route comes back by undo', async () => {
	const { ctx, lake, route } = await withRoute();
	await deleteRoute(ctx, lake, route.id);
	expect(await listRoutes(ctx, lake)).toEqual([]);
	await restoreRoute(ctx, lake, route.id);
	expect(await listRoutes(ctx, lake)).toEqual([route]);
});

test('a weak spot that is taken off the list stays in its route as one that is gone', async () => {
	const { ctx, lake, spot, route } = await withRoute();
	await deleteWeakSpot(ctx, lake, spot.id);
	expect((await getRoute(ctx, lake, route.id)).points[1]).toMatchObject({ isSpotDeleted: true });
	// It may stay when the route is changed, but no new route can be led over it.
	expect((await updateRoute(ctx, lake, route.id, aRoute(spot.id))).status).toBe('stored');
	expect(await addRoute(ctx, lake, aRoute(spot.id))).toEqual({ status: 'noSuchSpot', point: 1 });
});

test("another lake's weak spot is none of this one's", async () => {
	const { ctx, spot } = await withSpot();
	const other = (await inventedLake(ctx, { name: 'Other' })).id;
	expect(await addRoute(ctx, other, aRoute(spot.id))).toEqual({ status: 'noSuchSpot', point: 1 });
	await expect(deleteWeakSpot(ctx, other, spot.id)).rejects.toThrow('No weak spot');
});

test('a point is a weak spot or has a name, not both and not neither', () => {
	const with2 = (point: object) =>
		routeInput.safeParse({ name: 'A', points: [{ name: 'B' }, point] }).success;
	expect(with2({ spot: 'w-1' })).toBe(true);
	expect(with2({ spot: 'w-1', name: 'C' })).toBe(false);
	expect(with2({})).toBe(false);
	expect(with2({ spot: 'w-1', latitude: 1, longitude: 1 })).toBe(false);
	expect(routeInput.safeParse({ name: 'A', points: [{ name: 'B' }] }).success).toBe(false);
});

test('what a trip sheet keeps is what was asked to be kept', async () => {
	const { ctx, lake } = await emptyLake();
	const note = tripNoteInput.parse({ emergency: '000', party: 'two of us', back: '  ' });
	await keepTripNote(ctx, lake, note);
	expect(await getTripNote(ctx, lake)).toEqual({
		emergency: '000',
		party: 'two of us',
		back: null,
		told: null
	});
	await keepTripNote(ctx, lake, tripNoteInput.parse({}));
	expect(await ctx.db.selectFrom('trip_note').selectAll().execute()).toEqual([]);
});

test('what goes out as GPX comes in again as the same, and twice makes no more', async () => {
	const { ctx, lake, spot } = await withSpot();
	const points = [{ name: 'Landing', latitude: 47.4, longitude: -38.2 }, { spot: spot.id }];
	await addRoute(ctx, lake, aRoute(spot.id, { points }));
	const out = new TextEncoder().encode(await placesToGpx(ctx, lake));
	expect(await placesFromGpx(ctx, lake, out, 'rocks')).toMatchObject({ spots: 0, routes: 0 });

	const other = (await inventedLake(ctx, { name: 'Other' })).id;
	expect(await placesFromGpx(ctx, other, out, 'rocks')).toEqual({
		status: 'stored',
		spots: 1,
		routes: 1,
		notes: []
	});
	const [copy] = await listWeakSpots(ctx, other);
	expect({ ...copy, id: spot.id }).toEqual(spot);
	const [route] = await listRoutes(ctx, other);
	expect(route?.points.map((point) => point.spot?.id ?? point.name)).toEqual(['Landing', copy?.id]);
});

test('waypoints of no kind of ours become what was chosen, and names stay apart', async () => {
	const wpt = (lat: number, name: string) =>
		`<wpt lat="${lat}" lon="-38.2"><name>${name}</name></wpt>`;
	const file = (inner: string) => new TextEncoder().encode(`<gpx version="1.1">${inner}</gpx>`);
	const { ctx, lake } = await withSpot();
	await placesFromGpx(ctx, lake, file(wpt(47.5, 'Mill inlet') + wpt(47.6, 'Reef')), 'rocks');
	expect((await listWeakSpots(ctx, lake)).map(({ name, kind }) => `${name}: ${kind}`)).toEqual([
		'Mill inlet: inletOutlet',
		'Mill inlet 2: rocks',
		'Reef: rocks'
	]);
	const taken = await placesFromGpx(
		ctx,
		lake,
		file(`<metadata><name>Trip</name></metadata>${wpt(47.4, 'A') + wpt(47.6, 'Reef')}`),
		'route'
	);
	expect(taken).toMatchObject({ spots: 0, routes: 1 });
	const [trip] = await listRoutes(ctx, lake);
	expect(trip).toMatchObject({ name: 'Trip', points: [{ name: 'A' }, { name: 'Reef' }] });
	expect(trip?.points[1]?.spot?.kind).toBe('rocks');
});

test('far points, tracks and short routes are told of', async () => {
	const { ctx, lake } = await emptyLake();
	const bytes = new TextEncoder().encode(
		'<gpx version="1.1"><wpt lat="10" lon="10"/><rte><rtept lat="47.4" lon="-38.2"/></rte><trk/></gpx>'
	);
	const taken = await placesFromGpx(ctx, lake, bytes, 'crack');
	expect(taken.status === 'stored' && taken.notes.join(' ')).toMatch(
		/fewer than two.*tracks.*50 km/i
	);
});

test('a drilled winter: a spot without holes leaves the route unknown, one with holes decides it', async () => {
	const { ctx, id } = await drilledLake();
	const stored = await addWeakSpot(ctx, id, { ...INLET, kind: 'bogOrWeeds' });
	if (stored.status !== 'stored') throw new Error(stored.status);
	await addRoute(ctx, id, aRoute(stored.spot.id));
	const before = await placesView(ctx, id);
	expect(before.view.outlook).not.toBeNull();
	expect(before.spots[0]?.check.state).toBe('neverDrilled');
	expect(before.routes[0]?.answer.unknown).toEqual([1]);

	const { today } = before.view;
	const holes = [{ clear_m: 0.03, white_m: 0 }];
	const thin = readingInput.parse({ on: today, kind: 'measured', place: 'MILL inlet', holes });
	await addReadings(ctx, id, 'main', [thin]);
	const after = await placesView(ctx, id);
	expect(after.spots[0]?.check).toMatchObject({ state: 'counts', effective_m: 0.03 });
	const answer = after.routes[0]?.answer;
	expect(answer?.points[1]).toMatchObject({ effective_m: 0.03, by: 'holes' });
	expect(answer?.loads[0]).toMatchObject({ id: 'on-foot', status: 'notYet' });
	expect(answer?.loads[0]?.effective_m).toBeLessThanOrEqual(0.03);
	expect(after.routes[0]?.answer.loads.every(({ status }) => status !== 'reached')).toBe(true);
});

test('where the ice broke and the place is not on the list, it is told once', async () => {
	const { ctx, id } = await drilledLake();
	const broke = (place: string) =>
		readingInput.parse({ on: '2027-01-12', kind: 'wentThrough', place, holes: [] });
	await addReadings(ctx, id, 'main', [broke('Reef'), broke('mill inlet')]);
	await addWeakSpot(ctx, id, INLET);
	const { brokeElsewhere, spots } = await placesView(ctx, id);
	expect(brokeElsewhere.map(({ place }) => place)).toEqual(['Reef']);
	expect(spots[0]?.check.state).toBe('broke');
});

test('a route over a site that has been deleted since is one of which nothing is known', async () => {
	const { ctx, id } = await drilledLake();
	const made = await createSite(ctx, id, newSite.parse({ name: 'Bay', kind: 'basin' }));
	if (made.status !== 'stored') throw new Error(made.status);
	const points = [{ name: 'A' }, { name: 'B', site: made.site.id }];
	await addRoute(ctx, id, aRoute('', { points }));
	await deleteSite(ctx, id, made.site.id);
	expect((await placesView(ctx, id)).routes[0]?.answer.unknown).toEqual([1]);
});

test('holes at a weak spot tell of it alone: no load counts as reached by them', async () => {
	const { ctx, id } = await drilledLake();
	const holes = Array.from({ length: 5 }, () => ({ clear_m: 0.32, white_m: 0.02 }));
	const thick = readingInput.parse({ on: '2027-01-26', kind: 'measured', place: 'Reeds', holes });
	await addReadings(ctx, id, 'main', [thick]);
	const statuses = async () => {
		const { outlook } = await lakeView(ctx, id, { asOf: '2027-01-27' });
		return outlook?.forecast.loads.map(({ status }) => status) ?? [];
	};
	expect(await statuses()).toContain('reached');
	await addWeakSpot(ctx, id, { ...INLET, name: 'reeds', kind: 'bogOrWeeds' });
	const after = await statuses();
	expect(after).toContain('expectedNotDrilled');
	expect(after).not.toContain('reached');
});
