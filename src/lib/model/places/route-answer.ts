import type { IsoDate } from '../calendar.ts';
import type { Forecast, ForecastLoad, LoadStatus } from '../forecast.ts';
import type { LakeFacts } from '../lake.ts';
import { all_kg, type ChartMinimum, type ChartSet, type LoadCase } from '../load-case.ts';
import { toldSnow_kg_m2 } from '../parked/snow-load.ts';
import { holesFor } from '../reached.ts';
import type { Reading } from '../reading.ts';
import { requirement, type Conditions } from '../requirement.ts';
import { placeCheck, type PlaceCheck } from './place-check.ts';
import type { Route, RoutePoint } from './route.ts';
import { siteFacts, type SiteFacts } from './site-facts.ts';
import { isFlowing } from './weak-spot.ts';

/** As of a load at a site, and `notKnown`: at some point nobody knows what the ice carries. */
export type RouteStatus = LoadStatus | 'notKnown';

export interface PointAnswer {
	name: string;
	/** Effective thickness that the point is known to have; `null`: nothing is known. */
	effective_m: number | null;
	/** What it rests on: the site's bound for vehicles, or holes at the point itself. */
	by: 'bound' | 'holes' | null;
	check: PlaceCheck;
}

export interface RouteLoad {
	id: string;
	name: string;
	mass_kg: number;
	/** All of it that counts at one place, its trailer and those near by. */
	counted_kg: number;
	status: RouteStatus;
	/** The point that decides, counted from 0; `null` where no single one does. */
	weakest: number | null;
	/** What it is asked for there, and what it is known to have. */
	required_m: number | null;
	effective_m: number | null;
	/** Holes along the way that count, and how many are asked. */
	holes: number;
	holesAsked: number;
}

export interface RouteAnswer {
	points: PointAnswer[];
	/** Points of which nothing is known. */
	unknown: number[];
	/** The point with the least ice that is known. */
	weakest: number | null;
	loads: RouteLoad[];
}

export interface RouteInput {
	route: Route;
	lake: LakeFacts;
	/** The answer for each site that a point lies on; `null` where there is none. */
	forecasts: ReadonlyMap<string, Forecast | null>;
	/** Today at the lake. */
	today: IsoDate;
	/** This winter's, of all sites. */
	readings: readonly Reading[];
	loads: readonly LoadCase[];
	minimums: readonly ChartMinimum[];
	chartSet: ChartSet;
}

/**
 * What a route carries: what its weakest known point does, and nothing that is known where a weak spot
 * has no holes that count. Never the average.
 *
 * A plain point has the site's lower bound for vehicles, or less where its own holes say so; a weak spot
 * only what its own holes say. Moving water and cracks add what they ask for. No route stands better
 * than its sites do, and `reached` asks for enough holes at the route's own points. Our rules, cautious.
 */
export function routeAnswer(input: RouteInput): RouteAnswer {
	const facts = new Map(
		[...input.forecasts].map(([site, forecast]) => [
			site,
			siteFacts(forecast, input.loads, input.today)
		])
	);
	const nowhere = siteFacts(null, [], input.today);
	const points = input.route.points.map((point) =>
		pointAnswer(point, input.readings, facts.get(point.site) ?? nowhere)
	);
	const unknown = indices(points, ({ effective_m }) => effective_m === null);
	return {
		points,
		unknown,
		weakest: leastIndex(points.map(({ effective_m }) => effective_m)),
		loads: input.loads.map((load) => loadOn(load, points, unknown, input))
	};
}

function pointAnswer(
	point: RoutePoint,
	readings: readonly Reading[],
	facts: SiteFacts
): PointAnswer {
	const check = placeCheck(point, readings, facts);
	const { name } = point;
	const holes_m = check.state === 'counts' ? check.effective_m : null;
	if (point.isSpotDeleted) return { name, effective_m: null, by: null, check };
	if (point.spot !== null)
		return { name, effective_m: holes_m, by: holes_m === null ? null : 'holes', check };
	if (facts.bound_m === null || check.state === 'broke')
		return { name, effective_m: null, by: null, check };
	const own_m = check.effective_m ?? Infinity;
	return own_m < facts.bound_m
		? { name, effective_m: own_m, by: 'holes', check }
		: { name, effective_m: facts.bound_m, by: 'bound', check };
}

function loadOn(
	load: LoadCase,
	points: readonly PointAnswer[],
	unknown: readonly number[],
	input: RouteInput
): RouteLoad {
	const { id, name, mass_kg } = load;
	const answers = answersOf(load, input);
	const asked = points.map((_, index) => askedAt(load, index, input));
	const holes = points.reduce((sum, { check }) => sum + check.holes, 0);
	const weakest = leastIndex(
		points.map(({ effective_m }, index) => ratio(effective_m, asked[index] ?? null))
	);
	const counted_kg = Math.max(
		mass_kg,
		...answers.map((answer) => answer?.counted_kg ?? all_kg(load))
	);
	const base = { id, name, mass_kg, counted_kg, holes, holesAsked: holesFor(load) };
	const told = {
		weakest,
		required_m: weakest === null ? null : (asked[weakest] ?? null),
		effective_m: weakest === null ? null : (points[weakest]?.effective_m ?? null)
	};
	const isShort = told.effective_m !== null && told.effective_m < (told.required_m ?? Infinity);
	const status = worst(answers, { isShort, isUnknown: unknown.length > 0 });
	const isLacking = status === 'reached' && holes < base.holesAsked;
	return { ...base, ...told, status: isLacking ? 'expectedNotDrilled' : status };
}

/** The weightiest first: what closes a site closes the route. */
function worst(
	answers: readonly (ForecastLoad | null)[],
	{ isShort, isUnknown }: { isShort: boolean; isUnknown: boolean }
): RouteStatus {
	const has = (status: LoadStatus) => answers.some((answer) => answer?.status === status);
	if (has('askAnEngineer')) return 'askAnEngineer';
	if (has('withheld')) return 'withheld';
	if (isShort) return 'notYet';
	if (isUnknown || answers.length === 0 || answers.includes(null)) return 'notKnown';
	if (has('notYet')) return 'notYet';
	return has('expectedNotDrilled') ? 'expectedNotDrilled' : 'reached';
}

/** What each site of the route says of the load. */
function answersOf({ id }: LoadCase, { route, forecasts }: RouteInput): (ForecastLoad | null)[] {
	const sites = [...new Set(route.points.map(({ site }) => site))];
	return sites.map((site) => forecasts.get(site)?.loads.find((answer) => answer.id === id) ?? null);
}

function askedAt(load: LoadCase, index: number, input: RouteInput): number | null {
	const point = input.route.points[index];
	const kind = point?.spot?.kind;
	const there: LoadCase = {
		...load,
		current: load.current || (kind !== undefined && isFlowing(kind)),
		wetCracks: kind === 'crack' && load.wetCracks === 0 ? 1 : load.wetCracks
	};
	const conditions = conditionsAt(point?.site, input);
	return requirement(there, input.minimums, input.chartSet, conditions).required_m;
}

/** The site's conditions of the day, as the rules that shaped its loads tell them. */
function conditionsAt(site: string | undefined, { forecasts, lake }: RouteInput): Conditions {
	const forecast = site === undefined ? null : (forecasts.get(site) ?? null);
	const loads = forecast?.loads ?? [];
	const has = (code: string) => loads.some(({ rules }) => rules.some((rule) => rule.code === code));
	return {
		isRiver: lake.water === 'river',
		isWarmSpell: has('warmSpell'),
		isColdSnap: has('coldSnap'),
		snow_kg_m2: forecast === null ? 0 : toldSnow_kg_m2(forecast)
	};
}

function ratio(effective_m: number | null, required_m: number | null): number | null {
	if (effective_m === null || required_m === null) return null;
	return effective_m / required_m;
}

function leastIndex(values: readonly (number | null)[]): number | null {
	return values.reduce<number | null>((least, value, index) => {
		if (value === null) return least;
		return least === null || value < (values[least] ?? Infinity) ? index : least;
	}, null);
}

function indices<T>(values: readonly T[], holds: (value: T) => boolean): number[] {
	return values.flatMap((value, index) => (holds(value) ? [index] : []));
}
