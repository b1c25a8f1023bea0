import { placeKey } from '#lib/model/places/place-name.ts';
import type { Route } from '#lib/model/places/route.ts';
import { SEASON_RULES } from '#lib/model/places/season-rule.ts';
import type { PlacesView, SpotState } from '#lib/server/services/places/places-view.ts';
import type { PlotPlace, PlotRoute } from '#lib/ui/places/plot-drawing.ts';

/** What the page of weak spots shows. */
export function placesPage(places: PlacesView) {
	const { lake, today, asOf, outlook } = places.view;
	const spots = places.spots.map((state, index) => ({
		...state,
		number: String(index + 1),
		rule: SEASON_RULES[state.spot.kind]
	}));
	return {
		lake: { id: lake.id, name: lake.name, isInvented: lake.isInvented, water: lake.water },
		today,
		asOf,
		isLate: places.isLate,
		cautions: outlook?.forecast.cautions ?? [],
		spots,
		routes: places.routes.map(({ route, answer }) => ({
			id: route.id,
			name: route.name,
			points: route.points.length,
			answer
		})),
		plot: plotOf(places),
		broke: places.brokeElsewhere.map(({ id, on, place }) => ({ id, on, place }))
	};
}

export type PlacesPage = ReturnType<typeof placesPage>;
export type SpotItem = PlacesPage['spots'][number];

/** The same for who may not see exact places. */
export function withoutPositions(page: PlacesPage): PlacesPage {
	const spots = page.spots.map((item) => ({ ...item, spot: { ...item.spot, position: null } }));
	return { ...page, spots, plot: { places: [], routes: [] } };
}

/** All places with a position; a route's own points have letters, weak spots their numbers. */
export function plotOf({ spots, routes }: Pick<PlacesView, 'spots' | 'routes'>): {
	places: PlotPlace[];
	routes: PlotRoute[];
} {
	const own = spots.flatMap((state, index) => plotSpot(state, index) ?? []);
	const plain = routes.flatMap(({ route }) => plainPoints(route));
	const once = plain.filter(
		(place, index) => plain.findIndex((other) => isSamePoint(place, other)) === index
	);
	return {
		places: [...own, ...once.map((place, index) => ({ ...place, number: letters(index) }))],
		routes: routes.map(({ route: { id, name, points } }) => ({
			id,
			name,
			points: points.map(({ position }) => position)
		}))
	};
}

function plotSpot({ spot, check }: SpotState, index: number): PlotPlace | null {
	const { id, name, position } = spot;
	const state = check.state === 'counts' ? 'known' : 'unknown';
	return position && { id, number: String(index + 1), name, position, state };
}

function plainPoints({ id, points }: Route): PlotPlace[] {
	return points.flatMap(({ name, position, spot }, index) =>
		position && !spot
			? [{ id: `${id}-${index}`, number: '', name, position, state: 'plain' as const }]
			: []
	);
}

function isSamePoint(one: PlotPlace, other: PlotPlace): boolean {
	return (
		placeKey(one.name) === placeKey(other.name) &&
		one.position.latitude === other.position.latitude &&
		one.position.longitude === other.position.longitude
	);
}

/** @example letters(27) // => 'ab' */
function letters(index: number): string {
	const last = String.fromCharCode(97 + (index % 26));
	return index < 26 ? last : letters(Math.floor(index / 26) - 1) + last;
}
