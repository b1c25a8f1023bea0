import type { Position } from '../distance.ts';
import { HOLES_ON_FOOT, HOLES_VEHICLE } from '../reached.ts';
import { between } from './local-metres.ts';
import { legs_m, type Route, type RoutePoint } from './route.ts';
import { isAtShore, isFlowing } from './weak-spot.ts';

/** Farthest apart on open lake ice. County of Barrhead's guide for lakes, 30 m [R2]. */
export const OPEN_SPACING_m = 30;
/** Near any flow, and on rivers throughout. The same guide's figure for rivers, 15 m [R2]. */
export const FLOW_SPACING_m = 15;
/** From the shore on: the agencies' 10 to 20 ft and 150 ft brought to 30 ft [R2], derived. */
export const SHORE_SPACING_m = 10;
/** How far the shore's spacing reaches. Derived [R2]. */
export const SHORE_REACH_m = 50;
/** How far a flow is near. Our choice: nothing is published. */
export const FLOW_REACH_m = 50;
/** Longer ways are planned in parts. Our choice. */
export const LONGEST_m = 20_000;

const HAIR = 1e-9;

export interface PlannedHole {
	/** Along the route, from its first point. */
	at_m: number;
	/** Of the route's points, the one it is at or has passed last, counted from 0. */
	after: number;
	/** Way from that point. */
	after_m: number;
	isAtPoint: boolean;
	/** `null` where the points about it have none. */
	position: Position | null;
}

export interface HolePlan {
	holes: PlannedHole[];
	length_m: number;
}

/** A plan, or why there is none: the legs whose length nobody knows, by the point they lead to. */
export type Planned =
	| { status: 'planned'; plan: HolePlan }
	| { status: 'lengthNotKnown'; to: number[] }
	| { status: 'tooLong'; length_m: number }
	| { status: 'tooFewPoints' };

/**
 * Test holes along a route at the tightest published spacing: at each of its points, every 10 m for
 * 50 m from a shore, no more than 15 m apart within 50 m of moving water and on rivers, no more than
 * 30 m apart elsewhere; three at least on foot, five for vehicles.
 *
 * Spacing: County of Barrhead [R2], Minnesota DNR's 150 ft and another agency's 10 to 20 ft [R2], the
 * tightest that is practical of them, derived; holes at least: our rule, no published minimum was found.
 */
export function holePlan(route: Route, isRiver: boolean, forVehicle: boolean): Planned {
	const { points } = route;
	if (points.length < 2) return { status: 'tooFewPoints' };
	const legs = legs_m(points);
	const missing = legs.flatMap((leg_m, index) => (leg_m === null ? [index + 1] : []));
	if (missing.length > 0) return { status: 'lengthNotKnown', to: missing };
	const at_m = starts(legs.map((leg_m) => leg_m ?? 0));
	const length_m = at_m.at(-1) ?? 0;
	if (length_m > LONGEST_m) return { status: 'tooLong', length_m };
	const spaced = spacedOut(breaks(at_m, route), spacingAlong(at_m, route, isRiver));
	const all = atLeast(spaced, forVehicle ? HOLES_VEHICLE : HOLES_ON_FOOT);
	return { status: 'planned', plan: { holes: all.map((at) => hole(at, at_m, points)), length_m } };
}

function starts(legs: readonly number[]): number[] {
	return legs.reduce<number[]>((at_m, leg_m) => [...at_m, (at_m.at(-1) ?? 0) + leg_m], [0]);
}

/** Where the spacing may change, and each point itself. */
function breaks(at_m: readonly number[], route: Route): number[] {
	const end_m = at_m.at(-1) ?? 0;
	const edges = [
		...shores(at_m, route).flatMap((at) => [at - SHORE_REACH_m, at + SHORE_REACH_m]),
		...flows(at_m, route).flatMap((at) => [at - FLOW_REACH_m, at + FLOW_REACH_m])
	];
	const inside = edges.filter((at) => at > 0 && at < end_m);
	return [...new Set([...at_m, ...inside])].toSorted((a, b) => a - b);
}

function spacingAlong(
	at_m: readonly number[],
	route: Route,
	isRiver: boolean
): (at: number) => number {
	const [shore, flow] = [shores(at_m, route), flows(at_m, route)];
	return (at) => {
		if (shore.some((each) => Math.abs(each - at) < SHORE_REACH_m)) return SHORE_SPACING_m;
		const isNearFlow = isRiver || flow.some((each) => Math.abs(each - at) < FLOW_REACH_m);
		return isNearFlow ? FLOW_SPACING_m : OPEN_SPACING_m;
	};
}

function shores(at_m: readonly number[], { points, startsAtShore, endsAtShore }: Route): number[] {
	return at_m.filter((_, index) => {
		const { spot } = points[index] ?? {};
		const isEnd = (index === 0 && startsAtShore) || (index === points.length - 1 && endsAtShore);
		return isEnd || (spot ? isAtShore(spot.kind) : false);
	});
}

function flows(at_m: readonly number[], { points }: Route): number[] {
	return at_m.filter((_, index) => {
		const spot = points[index]?.spot;
		return spot ? isFlowing(spot.kind) : false;
	});
}

/** Each stretch in equal steps, none longer than its spacing. */
function spacedOut(edges: readonly number[], spacing: (at: number) => number): number[] {
	const steps = edges.slice(1).flatMap((to, index) => {
		const from = edges[index] ?? 0;
		const count = Math.max(1, Math.ceil((to - from) / spacing((from + to) / 2) - HAIR));
		return Array.from({ length: count }, (_, step) => from + ((step + 1) * (to - from)) / count);
	});
	return [edges[0] ?? 0, ...steps];
}

/** Parts the widest gap until there are enough. */
function atLeast(holes: readonly number[], count: number): number[] {
	const all = [...holes];
	while (all.length < count && (all.at(-1) ?? 0) > 0) {
		const gaps = all.slice(1).map((at, index) => at - (all[index] ?? 0));
		const widest = gaps.indexOf(Math.max(...gaps));
		all.splice(widest + 1, 0, (all[widest] ?? 0) + (gaps[widest] ?? 0) / 2);
	}
	return all;
}

function hole(at: number, at_m: readonly number[], points: readonly RoutePoint[]): PlannedHole {
	const after = at_m.findLastIndex((start) => start <= at + HAIR);
	const from_m = at_m[after] ?? 0;
	const leg_m = (at_m[after + 1] ?? from_m) - from_m;
	const [from, to] = [points[after]?.position ?? null, points[after + 1]?.position ?? null];
	const after_m = Math.max(0, at - from_m);
	const isAtPoint = after_m <= HAIR;
	const position = isAtPoint ? from : from && to && between(from, to, after_m / leg_m);
	return { at_m: at, after, after_m, isAtPoint, position };
}
