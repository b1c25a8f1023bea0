import type { LakeFacts } from './lake.ts';

const MIDDLE_AREA_km2 = 0.5; // stands for an unknown area: some shelter, not the thickest ice
const TURNING_AREA_km2 = 1; // half exposed; common practice, no source
const AREA_STEP = 0.5; // powers of ten from 27 to 73 % exposed [M-lo]
const FOREST_STEP_m = 150; // forest thins out over some 300 m of height [M-lo]

/**
 * How freely wind reaches the ice, 0 (a bog among trees) to 1 (a wide lake).
 *
 *   e = 1 / (1 + exp(-(log10 area - log10 1 km²)/0.5))
 *
 * Shores and trees shelter a band of some ten to twenty tree heights, so that it is the size of the
 * lake that counts. An unknown area is taken as 0.5 km². Shape chosen, see [Sturm2003] for the
 * effect of wind on lake snow [R].
 */
export function exposureFraction(lake: LakeFacts): number {
	const area_km2 = lake.area_km2 ?? MIDDLE_AREA_km2;
	if (area_km2 <= 0) return 0;
	return logistic((Math.log10(area_km2) - Math.log10(TURNING_AREA_km2)) / AREA_STEP);
}

/** How far a lake lies above or beyond the forest, 0 to 1; an unknown elevation is sea level. */
export function treelessFraction(lake: LakeFacts): number {
	const above_m = (lake.elevation_m ?? 0) - forestEnd_m(Math.abs(lake.latitude));
	return logistic(above_m / FOREST_STEP_m);
}

/**
 * Height where closed forest ends: 3,300 m up to 40°, from there 100 m less a degree, 300 m at 70°.
 *
 * Inland mountains; several hundred metres lower near coasts. Source: [Koerner2012] [M-lo].
 */
function forestEnd_m(latitude: number): number {
	return 3300 - 100 * Math.max(0, latitude - 40);
}

function logistic(x: number): number {
	return 1 / (1 + Math.exp(-x));
}
