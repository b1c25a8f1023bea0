import { total_m, type IceColumn } from './column.ts';
import { buoyancy_kg_m2 } from './flooding.ts';

/** Snow that falls on bare ice, taken as fresh near 0 °C: 150 to 200 kg/m³ [M-hi]. */
export const FRESH_kg_m3 = 150;

/**
 * Further snow, as dense as what lies there, that is as heavy as the sheet can float; `null` without
 * ice.
 *
 * Archimedes, for the mean of the site: drifts flood sooner. See {@link buoyancy_kg_m2}.
 */
export function floodsWithMoreSnow_m(column: IceColumn): number | null {
	const more_kg_m2 = floodsWithMoreSnow_kg_m2(column);
	return more_kg_m2 === null ? null : more_kg_m2 / density_kg_m3(column);
}

/** The same by weight. */
export function floodsWithMoreSnow_kg_m2(column: IceColumn): number | null {
	if (total_m(column) <= 0) return null;
	const floats_kg_m2 = buoyancy_kg_m2(column.clear_m, column.white_m);
	return Math.max(0, floats_kg_m2 - column.snow_m * density_kg_m3(column));
}

function density_kg_m3({ snow_m, snowDensity_kg_m3 }: IceColumn): number {
	return snow_m > 0 ? snowDensity_kg_m3 : FRESH_kg_m3;
}
