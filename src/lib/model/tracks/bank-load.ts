import { buoyancy_kg_m2 } from '../flooding.ts';
import { spread_m } from '../ice-plate.ts';

/** A track and the snow that its clearing moves. */
export interface Clearing {
	clear_m: number;
	white_m: number;
	/** Water equivalent of the snow around it, and of what is cleared. */
	snow_kg_m2: number;
	cleared_kg_m2: number;
	/** Of the track. */
	width_m: number;
}

/** Snow put on each bank, for a metre of its length: half of what lay on the track. */
export function bank_kg_m({ cleared_kg_m2, width_m }: Clearing): number {
	return (cleared_kg_m2 * width_m) / 2;
}

/**
 * How wide each bank has to be spread so that its weight does not put the ice under water: over the snow
 * that lies there already, no more than the sheet can float.
 *
 *   b = m/(B - S)
 *
 * Archimedes, for ice that bends to its load, as it does within days; see {@link buoyancy_kg_m2} [C]. `null`
 * where the snow alone is too heavy already.
 */
export function bankWidth_m(clearing: Clearing): number | null {
	const { clear_m, white_m, snow_kg_m2 } = clearing;
	const spare_kg_m2 = buoyancy_kg_m2(clear_m, white_m) - snow_kg_m2;
	return spare_kg_m2 > 0 ? bank_kg_m(clearing) / spare_kg_m2 : null;
}

/**
 * A track narrower than this hangs together with its banks and sinks with them: the length over which the
 * sheet spreads a load, to either side. See {@link spread_m}; our choice of a limit [C].
 */
export function widthAlone_m(thickness_m: number): number {
	return 2 * spread_m(thickness_m);
}
