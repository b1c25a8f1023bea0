import { distance_m, type Position } from '#lib/model/distance.ts';
import { placeKey } from '#lib/model/places/place-name.ts';
import { WEAK_SPOT_KINDS, type WeakSpot, type WeakSpotKind } from '#lib/model/places/weak-spot.ts';
import type { Context } from '../../context.ts';
import { insertRouteWithin } from '../../storage/routes.ts';
import { insertWeakSpots } from '../../storage/weak-spots.ts';
import { getLake } from '../lakes.ts';
import { parseGpx, type GpxFile, type GpxPoint } from './gpx/parse-gpx.ts';
import { writeGpx } from './gpx/write-gpx.ts';
import { MOST_POINTS, routeInput, type NewRoute } from './route-input.ts';
import { listRoutes, MOST_ROUTES, newRouteRow, toPointRow } from './routes.ts';
import {
	isTaken,
	listWeakSpots,
	MOST_SPOTS,
	newSpotRow,
	toSpot,
	weakSpotInput
} from './weak-spots.ts';

/** A point of a route this near a weak spot of its name is that weak spot. Our choice. */
const SAME_SPOT_m = 25;
/** Farther from the lake's own position, somebody may have sent another lake's file. Our choice. */
const FAR_m = 50_000;

/** What waypoints become whose own kind is none of ours. */
export type WaypointsAs = WeakSpotKind | 'route';

export type TakenIn =
	| { status: 'stored'; spots: number; routes: number; notes: string[] }
	| { status: 'refused'; reason: string };

/** The lake's places as GPX 1.1. @throws LakeNotFound */
export async function placesToGpx(ctx: Context, lakeId: string): Promise<string> {
	const { name } = await getLake(ctx, lakeId);
	return writeGpx(name, await listWeakSpots(ctx, lakeId), await listRoutes(ctx, lakeId));
}

/**
 * Takes in a GPX file, whole or not at all: waypoints become weak spots, or the points of one route,
 * routes become routes. What is on the list already is left as it is. @throws LakeNotFound
 */
export async function placesFromGpx(
	ctx: Context,
	lakeId: string,
	bytes: Uint8Array,
	as: WaypointsAs
): Promise<TakenIn> {
	const lake = await getLake(ctx, lakeId);
	const parsed = parseGpx(bytes);
	if (parsed.status === 'refused') return parsed;
	const { file } = parsed;
	const stored = await listWeakSpots(ctx, lakeId);
	const plan = planSpots(ctx, lakeId, file, as, stored);
	const known = await listRoutes(ctx, lakeId);
	const wanted = [...file.routes, ...plan.asRoute].filter(
		({ name, points }) =>
			!known.some(
				(route) => placeKey(route.name) === placeKey(name) && route.points.length === points.length
			)
	);
	const spots = [...stored, ...plan.rows.map(toSpot)];
	if (spots.length > MOST_SPOTS) return tooMany('weak spots', MOST_SPOTS);
	if (known.length + wanted.length > MOST_ROUTES) return tooMany('routes', MOST_ROUTES);
	const long = wanted.find(({ points }) => points.length > MOST_POINTS);
	if (long)
		return {
			status: 'refused',
			reason: `The route “${long.name ?? 'without a name'}” has ${long.points.length} points; ${MOST_POINTS} at most are taken in. Send a simpler one.`
		};
	const routes = wanted.flatMap((route, index) => toRoute(route, index, spots) ?? []);
	await ctx.db.transaction().execute(async (tx) => {
		await insertWeakSpots(tx, plan.rows);
		for (const route of routes)
			await insertRouteWithin(tx, newRouteRow(ctx, lakeId, route), route.points.map(toPointRow));
	});
	const dropped = file.routes.length + plan.asRoute.length - routes.length;
	const notes = notesOn(file, lake, { repeated: plan.repeated, dropped });
	return { status: 'stored', spots: plan.rows.length, routes: routes.length, notes };
}

function planSpots(
	ctx: Context,
	lakeId: string,
	{ name, waypoints }: GpxFile,
	as: WaypointsAs,
	stored: readonly WeakSpot[]
) {
	const rows: ReturnType<typeof newSpotRow>[] = [];
	const plain: GpxPoint[] = [];
	let repeated = 0;
	for (const [index, point] of waypoints.entries()) {
		const kind = WEAK_SPOT_KINDS.find((each) => each === point.type) ?? as;
		if (kind === 'route') plain.push({ ...point, name: point.name ?? `Waypoint ${index + 1}` });
		else if (findSpot(stored, point)) repeated += 1;
		else {
			const taken = [...stored, ...rows.map(toSpot)];
			const called = freeName(point.name ?? `Waypoint ${index + 1}`, taken);
			const { latitude, longitude, remark } = point;
			const input = weakSpotInput.parse({ name: called, kind, latitude, longitude, remark });
			rows.push(newSpotRow(ctx, lakeId, input));
		}
	}
	const asRoute = plain.length > 0 ? [{ name: name ?? 'From waypoints', points: plain }] : [];
	return { rows, asRoute, repeated };
}

/** `null` for one that is no way from somewhere to somewhere. */
function toRoute(
	{ name, points }: GpxFile['routes'][number],
	index: number,
	spots: readonly WeakSpot[]
): NewRoute | null {
	if (points.length < 2) return null;
	return routeInput.parse({
		name: name ?? `Route ${index + 1}`,
		points: points.map((point, at) => {
			const spot = findSpot(spots, point);
			const { latitude, longitude } = point;
			return spot
				? { spot: spot.id }
				: { name: point.name ?? `Point ${at + 1}`, latitude, longitude };
		})
	});
}

function findSpot(spots: readonly WeakSpot[], point: GpxPoint): WeakSpot | undefined {
	return spots.find(
		({ name, position }) =>
			placeKey(name) === placeKey(point.name) &&
			position !== null &&
			distance_m(position, point) <= SAME_SPOT_m
	);
}

/** @example freeName('Inlet', spots) // => 'Inlet 2' */
function freeName(name: string, taken: readonly WeakSpot[]): string {
	for (let number = 1; ; number++) {
		const called = number === 1 ? name : `${name.slice(0, 110)} ${number}`;
		if (!isTaken(taken, called)) return called;
	}
}

function notesOn(
	file: GpxFile,
	lake: Position,
	{ repeated, dropped }: { repeated: number; dropped: number }
): string[] {
	const all = [...file.waypoints, ...file.routes.flatMap(({ points }) => points)];
	const far = all.filter((point) => distance_m(lake, point) > FAR_m).length;
	return [
		...when(repeated > 0, `${repeated} of the waypoints are on the list already.`),
		...when(
			dropped > 0,
			`${dropped} of the routes are here already, or have fewer than two points.`
		),
		...when(file.tracks > 0, 'Recorded tracks are not taken in: a track is no evidence of ice.'),
		...when(
			far > 0,
			`${far} of the points lie more than 50 km from the lake’s own position: is it this lake’s file?`
		)
	];
}

function when(holds: boolean, text: string): string[] {
	return holds ? [text] : [];
}

function tooMany(what: string, most: number): TakenIn {
	return { status: 'refused', reason: `With this file there would be more than ${most} ${what}.` };
}
