import { winterSpan } from '#lib/model/calendar.ts';
import type { Forecast } from '#lib/model/forecast.ts';
import { isLate } from '#lib/model/places/late-season.ts';
import { lookAgain, type LookAgain } from '#lib/model/places/look-again.ts';
import { placeCheck, type PlaceCheck } from '#lib/model/places/place-check.ts';
import { isSamePlace } from '#lib/model/places/place-name.ts';
import { routeAnswer, type RouteAnswer } from '#lib/model/places/route-answer.ts';
import type { Route } from '#lib/model/places/route.ts';
import { siteFacts } from '#lib/model/places/site-facts.ts';
import type { WeakSpot } from '#lib/model/places/weak-spot.ts';
import type { Reading } from '#lib/model/reading.ts';
import type { WeatherDay } from '#lib/model/weather.ts';
import type { Words } from '#lib/model/words.ts';
import type { Context } from '../../context.ts';
import { listReadingRows } from '../../storage/readings.ts';
import { readWeatherDays } from '../../storage/weather-days.ts';
import { chartMinimums } from '../charts.ts';
import { lakeView, type LakeView, type ViewOptions } from '../lake-view.ts';
import { listSites, MAIN_SITE } from '../sites.ts';
import { listRoutes } from './routes.ts';
import { listWeakSpots } from './weak-spots.ts';

export interface SpotState {
	spot: WeakSpot;
	check: PlaceCheck;
	/** Why it is to be looked at again. */
	again: LookAgain[];
}

export interface RouteState {
	route: Route;
	answer: RouteAnswer;
	/** For each point why it is to be looked at again. */
	again: LookAgain[][];
}

/** A lake's weak spots and routes with what is known of them today. */
export interface PlacesView {
	/** Of the main site. */
	view: LakeView;
	/** The sun or a thaw works on the ice. */
	isLate: boolean;
	spots: SpotState[];
	routes: RouteState[];
	/** Readings where the ice broke at a place that is not on the list. */
	brokeElsewhere: Reading[];
}

/** All of them as they stand today. @throws LakeNotFound */
export async function placesView(ctx: Context, lakeId: string, words?: Words): Promise<PlacesView> {
	// As the lake's page asks, whose estimate is kept.
	const options = { toWinterEnd: true, ...(words ? { words } : {}) };
	const view = await lakeView(ctx, lakeId, options);
	const known = await gather(ctx, view);
	const spots = await listWeakSpots(ctx, lakeId);
	const routes = await listRoutes(ctx, lakeId);
	const forecasts = await forecastsFor(ctx, view, routes, options);
	return {
		view,
		isLate: isLateIn(view),
		spots: spots.map((spot) => spotState(spot, known, view)),
		routes: routes.map((route) => routeState(route, forecasts, known, view)),
		brokeElsewhere: known.readings.filter(
			({ kind, place }) =>
				kind === 'wentThrough' && !spots.some(({ name }) => isSamePlace(name, place))
		)
	};
}

interface Known {
	/** This winter's, of all sites. */
	readings: Reading[];
	weather: WeatherDay[];
}

async function gather(ctx: Context, { lake, winter }: LakeView): Promise<Known> {
	const [from, to] = winterSpan(winter);
	return {
		readings: await listReadingRows(ctx.db, { lakeId: lake.id, from, to }),
		weather: await readWeatherDays(ctx.db, lake.id, from, to)
	};
}

function spotState(spot: WeakSpot, { readings, weather }: Known, view: LakeView): SpotState {
	const facts = siteFacts(view.outlook?.forecast ?? null, view.loads, view.today);
	const check = placeCheck({ name: spot.name, spot }, readings, facts);
	return { spot, check, again: lookAgain(check.lastOn, view.today, weather, view.lake.water) };
}

function routeState(
	route: Route,
	forecasts: ReadonlyMap<string, Forecast | null>,
	{ readings, weather }: Known,
	{ lake, loads, today }: LakeView
): RouteState {
	const { chartSet } = lake;
	const minimums = chartMinimums;
	const answer = routeAnswer({
		route,
		lake,
		forecasts,
		today,
		readings,
		loads,
		minimums,
		chartSet
	});
	const again = answer.points.map(({ check }) =>
		lookAgain(check.lastOn, today, weather, lake.water)
	);
	return { route, answer, again };
}

/** The answer of each site that a route leads over. */
async function forecastsFor(
	ctx: Context,
	view: LakeView,
	routes: readonly Route[],
	options: ViewOptions
): Promise<Map<string, Forecast | null>> {
	const sites = new Set(routes.flatMap(({ points }) => points.map(({ site }) => site)));
	const forecasts = new Map<string, Forecast | null>();
	const there = new Set((await listSites(ctx, view.lake.id)).map(({ id }) => id));
	for (const site of sites) {
		const isMain = site === MAIN_SITE;
		const own = isMain ? view : await otherView(ctx, view, site, there, options);
		forecasts.set(site, own?.outlook?.forecast ?? null);
	}
	return forecasts;
}

/** `null` for a site that has been deleted since: nothing is known there. */
function otherView(
	ctx: Context,
	{ lake }: LakeView,
	site: string,
	there: ReadonlySet<string>,
	options: ViewOptions
): Promise<LakeView> | null {
	return there.has(site) ? lakeView(ctx, lake.id, { ...options, site }) : null;
}

function isLateIn({ lake, asOf, outlook }: LakeView): boolean {
	const days = (outlook?.forecast.days ?? []).filter(({ on }) => on <= asOf);
	return isLate({
		latitude: lake.latitude,
		asOf,
		total_m: days.flatMap(({ total_m }) => total_m.p50 ?? []),
		isWarm: outlook !== null && outlook.warmSpell.state !== 'none'
	});
}
