import { distance_m, type Position } from '../distance.ts';
import type { WeakSpot } from './weak-spot.ts';

/** A point of a route: a weak spot, or a place where the site's estimate stands. */
export interface RoutePoint {
	name: string;
	position: Position | null;
	/** Way from the point before, as somebody gave it; used where positions do not tell it. */
	leg_m: number | null;
	/** `null` for a plain point. */
	spot: WeakSpot | null;
	/** The weak spot has been taken off the list; nothing is known of it any more. */
	isSpotDeleted: boolean;
	/** Whose estimate stands at a plain point. */
	site: string;
}

export interface Route {
	id: string;
	name: string;
	/** The first point lies where the ice begins. */
	startsAtShore: boolean;
	endsAtShore: boolean;
	points: RoutePoint[];
}

/** The way from each point to the next, `null` where neither positions nor anybody tells it. */
export function legs_m(points: readonly RoutePoint[]): (number | null)[] {
	return points.slice(1).map((point, index) => {
		const before = points[index];
		return before?.position && point.position
			? distance_m(before.position, point.position)
			: point.leg_m;
	});
}

/** The whole way; `null` where part of it is not known. */
export function length_m(points: readonly RoutePoint[]): number | null {
	return legs_m(points).reduce<number | null>(
		(sum, leg_m) => (sum === null || leg_m === null ? null : sum + leg_m),
		0
	);
}
