import { z } from 'zod';
import type { Context } from '../context.ts';
import { loadInput } from './load-input.ts';
import { addLoad } from './own-loads.ts';
import { addRoute } from './places/routes.ts';
import { routeInput } from './places/route-input.ts';
import { addWeakSpot, weakSpotInput } from './places/weak-spots.ts';

const point = z.object({ spot: z.string().optional() }).loose();

/** What people would have entered: loads of their own, weak spots, and routes by the spots' names. */
export const demoPlaces = z.object({
	loads: z.array(loadInput).default([]),
	weakSpots: z.array(weakSpotInput).default([]),
	routes: z.array(z.object({ points: z.array(point) }).loose()).default([])
});

/** @throws ZodError, and Error for a route over a weak spot that is not in the file. */
export async function loadDemoPlaces(
	ctx: Context,
	lakeId: string,
	{ loads, weakSpots, routes }: z.output<typeof demoPlaces>
): Promise<void> {
	for (const load of loads) await addLoad(ctx, lakeId, load);
	const ids = new Map<string, string>();
	for (const spot of weakSpots) {
		const stored = await addWeakSpot(ctx, lakeId, spot);
		if (stored.status === 'stored') ids.set(spot.name, stored.spot.id);
	}
	for (const route of routes) {
		const points = route.points.map((each) =>
			each.spot === undefined ? each : { ...each, spot: ids.get(each.spot) ?? each.spot }
		);
		const { status } = await addRoute(ctx, lakeId, routeInput.parse({ ...route, points }));
		if (status !== 'stored') throw new Error(`A demo route cannot be stored: ${status}`);
	}
}
