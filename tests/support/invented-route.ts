import type { Route, RoutePoint } from '#lib/model/places/route.ts';
import type { WeakSpot, WeakSpotKind } from '#lib/model/places/weak-spot.ts';

/** An invented weak spot. */
export function weakSpot(kind: WeakSpotKind, changes: Partial<WeakSpot> = {}): WeakSpot {
	const rest = { position: null, checkedOn: null, remark: null };
	return { id: `w-${kind}`, name: `The ${kind}`, kind, ...rest, ...changes };
}

/** A plain point, so far from the point before it. */
export function plain(name: string, leg_m: number | null = null): RoutePoint {
	return { name, position: null, leg_m, spot: null, isSpotDeleted: false, site: 'main' };
}

export function spotPoint(
	kind: WeakSpotKind,
	leg_m: number | null = null,
	changes: Partial<WeakSpot> = {}
): RoutePoint {
	const spot = weakSpot(kind, changes);
	return { ...plain(spot.name, leg_m), position: spot.position, spot };
}

/** From the shore over the points given. */
export function route(points: RoutePoint[], changes: Partial<Route> = {}): Route {
	const rest = { startsAtShore: true, endsAtShore: false };
	return { id: 'way-1', name: 'Way of the tests', ...rest, points, ...changes };
}
