import type { Route, RoutePoint } from '#lib/model/places/route.ts';
import type { Context } from '../../context.ts';
import * as storage from '../../storage/routes.ts';
import { listAllWeakSpotRows, type WeakSpotRow } from '../../storage/weak-spots.ts';
import { newId } from '../ids.ts';
import { getLake } from '../lakes.ts';
import { NotFound } from '../not-found.ts';
import { getSite } from '../sites.ts';
import type { NewPoint, NewRoute } from './route-input.ts';
import { listWeakSpots, toSpot } from './weak-spots.ts';

export class RouteNotFound extends NotFound {
	constructor(lakeId: string, id: string) {
		super('route', id, ` of lake "${lakeId}"`);
	}
}

/** More than can be read side by side. */
export const MOST_ROUTES = 50;

/** Stored, or why not: a point that is no weak spot of the lake's, counted from 0. */
export type StoredRoute =
	| { status: 'stored'; route: Route }
	| { status: 'noSuchSpot'; point: number }
	| { status: 'tooMany' };

/** In the order they were entered. @throws LakeNotFound */
export async function listRoutes(ctx: Context, lakeId: string): Promise<Route[]> {
	await getLake(ctx, lakeId);
	const spots = await listAllWeakSpotRows(ctx.db, lakeId);
	return (await storage.listRouteRows(ctx.db, lakeId)).map((rows) => toRoute(rows, spots));
}

/** @throws RouteNotFound */
export async function getRoute(ctx: Context, lakeId: string, id: string): Promise<Route> {
	return read(ctx, lakeId, id, false);
}

/** @throws LakeNotFound, SiteNotFound */
export async function addRoute(
	ctx: Context,
	lakeId: string,
	input: NewRoute
): Promise<StoredRoute> {
	const routes = await listRoutes(ctx, lakeId);
	if (routes.length >= MOST_ROUTES) return { status: 'tooMany' };
	const wrong = await wrongPoint(ctx, lakeId, input);
	if (wrong !== null) return { status: 'noSuchSpot', point: wrong };
	const row = newRouteRow(ctx, lakeId, input);
	await storage.insertRoute(ctx.db, row, input.points.map(toPointRow));
	return { status: 'stored', route: await getRoute(ctx, lakeId, row.id) };
}

/** Replaces the route with its points. @throws RouteNotFound, SiteNotFound */
export async function updateRoute(
	ctx: Context,
	lakeId: string,
	id: string,
	input: NewRoute
): Promise<StoredRoute> {
	const before = await getRoute(ctx, lakeId, id);
	const kept = new Set(before.points.flatMap(({ spot }) => spot?.id ?? []));
	const wrong = await wrongPoint(ctx, lakeId, input, kept);
	if (wrong !== null) return { status: 'noSuchSpot', point: wrong };
	await storage.replaceRoute(ctx.db, id, toColumns(input), input.points.map(toPointRow));
	return { status: 'stored', route: await getRoute(ctx, lakeId, id) };
}

/** Hides it until {@link restoreRoute}. @throws RouteNotFound */
export async function deleteRoute(ctx: Context, lakeId: string, id: string): Promise<void> {
	await getRoute(ctx, lakeId, id);
	await storage.markRoute(ctx.db, id, ctx.now());
}

/** Takes a deletion back. @throws RouteNotFound when there never was such a route. */
export async function restoreRoute(ctx: Context, lakeId: string, id: string): Promise<Route> {
	const route = await read(ctx, lakeId, id, true);
	await storage.markRoute(ctx.db, id, null);
	return route;
}

async function read(
	ctx: Context,
	lakeId: string,
	id: string,
	withDeleted: boolean
): Promise<Route> {
	await getLake(ctx, lakeId);
	const rows = await storage.findRouteRows(ctx.db, lakeId, id);
	if (!rows || (rows.route.deleted_at !== null && !withDeleted))
		throw new RouteNotFound(lakeId, id);
	return toRoute(rows, await listAllWeakSpotRows(ctx.db, lakeId));
}

/** A weak spot that has been deleted stays in a route that has it, so that the gap is seen. */
async function wrongPoint(
	ctx: Context,
	lakeId: string,
	{ points }: NewRoute,
	kept: ReadonlySet<string> = new Set()
): Promise<number | null> {
	for (const site of new Set(points.map((point) => point.site))) await getSite(ctx, lakeId, site);
	const ids = new Set((await listWeakSpots(ctx, lakeId)).map(({ id }) => id));
	const wrong = points.findIndex(({ spot }) => spot !== null && !ids.has(spot) && !kept.has(spot));
	return wrong < 0 ? null : wrong;
}

/** A row for a route that is not stored yet. */
export function newRouteRow(ctx: Context, lakeId: string, input: NewRoute): storage.RouteRow {
	const created_at = ctx.now().toISOString();
	const id = newId('way');
	return { id, lake_id: lakeId, created_at, deleted_at: null, ...toColumns(input) };
}

export function toPointRow(point: NewPoint): storage.NewRoutePoint {
	const { spot, name, latitude, longitude, site, leg_m } = point;
	return spot === null
		? { spot_id: null, name, site_id: site, latitude, longitude, leg_m }
		: { spot_id: spot, name: null, site_id: null, latitude: null, longitude: null, leg_m };
}

function toColumns({ name, startsAtShore, endsAtShore }: NewRoute) {
	const starts_at_shore: 0 | 1 = startsAtShore ? 1 : 0;
	const ends_at_shore: 0 | 1 = endsAtShore ? 1 : 0;
	return { name, starts_at_shore, ends_at_shore };
}

function toRoute({ route, points }: storage.RouteRows, spots: readonly WeakSpotRow[]): Route {
	return {
		id: route.id,
		name: route.name,
		startsAtShore: route.starts_at_shore === 1,
		endsAtShore: route.ends_at_shore === 1,
		points: points.map((point) => toPoint(point, spots))
	};
}

function toPoint(row: storage.RoutePointRow, spots: readonly WeakSpotRow[]): RoutePoint {
	const { name, latitude, longitude, leg_m, site_id, spot_id } = row;
	const found = spots.find(({ id }) => id === spot_id);
	const spot = found ? toSpot(found) : null;
	const own = latitude === null || longitude === null ? null : { latitude, longitude };
	return {
		name: spot?.name ?? name ?? '',
		position: spot ? spot.position : own,
		leg_m,
		spot,
		isSpotDeleted: found ? found.deleted_at !== null : false,
		site: site_id ?? 'main'
	};
}
