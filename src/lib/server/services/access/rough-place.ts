import type { Viewer } from './viewer.ts';
import { seesPlaces } from './viewer.ts';

/** Some ten kilometres: enough for the sun, and not for finding the lake. Our choice. */
const ROUGH_deg = 0.1;

/** What has a position, as a viewer may see it: to a tenth of a degree for who sees no exact places. */
export function asSeenBy<Placed extends { latitude: number; longitude: number }>(
	viewer: Viewer,
	placed: Placed
): Placed {
	if (seesPlaces(viewer)) return placed;
	const { latitude, longitude } = placed;
	return { ...placed, latitude: roughly(latitude), longitude: roughly(longitude) };
}

function roughly(degrees: number): number {
	return Math.round(degrees / ROUGH_deg) / Math.round(1 / ROUGH_deg);
}
