/** The ice at one site on one day, from the top down: snow, white ice, slush, clear ice. */
export interface IceColumn {
	snow_m: number;
	/** Meaningful while `snow_m` is above zero. */
	snowDensity_kg_m3: number;
	/** Water-soaked snow between the dry snow and the ice. Carries nothing. */
	slush_m: number;
	white_m: number;
	clear_m: number;
	/** Water inside the sound-looking ice, 0 (solid) to 1. Strength goes with it before thickness does. */
	liquidFraction: number;
}

export const OPEN_WATER: IceColumn = {
	snow_m: 0,
	snowDensity_kg_m3: 0,
	slush_m: 0,
	white_m: 0,
	clear_m: 0,
	liquidFraction: 0
};

/** Clear and white ice, without slush and snow. */
export function total_m(column: IceColumn): number {
	return column.clear_m + column.white_m;
}
