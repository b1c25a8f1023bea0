import { sql, type Insertable, type Kysely, type Selectable } from 'kysely';
import type { RoutePointTable, RouteTable } from './places-schema.ts';
import type { Database } from './schema.ts';

export type RouteRow = Selectable<RouteTable>;
export type RoutePointRow = Selectable<RoutePointTable>;
export type NewRoutePoint = Omit<Insertable<RoutePointTable>, 'route_id' | 'place'>;

export interface RouteRows {
	route: RouteRow;
	/** In their order. */
	points: RoutePointRow[];
}

/** Routes that are not deleted, in the order they were entered. */
export async function listRouteRows(db: Kysely<Database>, lakeId: string): Promise<RouteRows[]> {
	const routes = await db
		.selectFrom('route')
		.selectAll()
		.where('lake_id', '=', lakeId)
		.where('deleted_at', 'is', null)
		.orderBy('created_at')
		.orderBy(sql`rowid`)
		.execute();
	return withPoints(db, routes);
}

/** The route of this lake, deleted or not. */
export async function findRouteRows(
	db: Kysely<Database>,
	lakeId: string,
	id: string
): Promise<RouteRows | undefined> {
	const route = await db
		.selectFrom('route')
		.selectAll()
		.where('lake_id', '=', lakeId)
		.where('id', '=', id)
		.executeTakeFirst();
	return route && (await withPoints(db, [route]))[0];
}

export async function insertRoute(
	db: Kysely<Database>,
	route: Insertable<RouteTable>,
	points: readonly NewRoutePoint[]
): Promise<void> {
	await db.transaction().execute((tx) => insertRouteWithin(tx, route, points));
}

/** For a transaction that does more. */
export async function insertRouteWithin(
	tx: Kysely<Database>,
	route: Insertable<RouteTable>,
	points: readonly NewRoutePoint[]
): Promise<void> {
	await tx.insertInto('route').values(route).execute();
	await insertPoints(tx, route.id, points);
}

/** Replaces the points, all or none. */
export async function replaceRoute(
	db: Kysely<Database>,
	id: string,
	change: Pick<RouteRow, 'name' | 'starts_at_shore' | 'ends_at_shore'>,
	points: readonly NewRoutePoint[]
): Promise<void> {
	await db.transaction().execute(async (tx) => {
		await tx.updateTable('route').set(change).where('id', '=', id).execute();
		await tx.deleteFrom('route_point').where('route_id', '=', id).execute();
		await insertPoints(tx, id, points);
	});
}

export async function markRoute(
	db: Kysely<Database>,
	id: string,
	deletedAt: Date | null
): Promise<void> {
	const deleted_at = deletedAt?.toISOString() ?? null;
	await db.updateTable('route').set({ deleted_at }).where('id', '=', id).execute();
}

async function insertPoints(
	db: Kysely<Database>,
	route_id: string,
	points: readonly NewRoutePoint[]
): Promise<void> {
	const rows = points.map((point, place) => ({ ...point, route_id, place }));
	if (rows.length > 0) await db.insertInto('route_point').values(rows).execute();
}

async function withPoints(db: Kysely<Database>, routes: readonly RouteRow[]): Promise<RouteRows[]> {
	if (routes.length === 0) return [];
	const ids = routes.map(({ id }) => id);
	const points = await db
		.selectFrom('route_point')
		.selectAll()
		.where('route_id', 'in', ids)
		.orderBy('route_id')
		.orderBy('place')
		.execute();
	return routes.map((route) => ({
		route,
		points: points.filter(({ route_id }) => route_id === route.id)
	}));
}
