import { holePlan } from '#lib/model/places/hole-plan.ts';
import { length_m } from '#lib/model/places/route.ts';
import type { PlacesView, RouteState } from '#lib/server/services/places/places-view.ts';
import { plotOf } from '../../places-page.ts';

/** What the page of one route shows. */
export function routePage(places: PlacesView, state: RouteState, forVehicle: boolean) {
	const { lake, today, asOf, outlook } = places.view;
	const { route, answer, again } = state;
	const own = new Set(route.points.flatMap(({ spot }) => spot?.id ?? []));
	const spots = places.spots.map((each) =>
		own.has(each.spot.id) ? each : { ...each, spot: { ...each.spot, position: null } }
	);
	return {
		lake: { id: lake.id, name: lake.name, isInvented: lake.isInvented, water: lake.water },
		today,
		asOf,
		route,
		answer,
		again,
		length_m: length_m(route.points),
		forVehicle,
		planned: holePlan(route, lake.water === 'river', forVehicle),
		plot: plotOf({ spots, routes: [state] }),
		cautions: outlook?.forecast.cautions ?? []
	};
}

export type RoutePage = ReturnType<typeof routePage>;
