import type { IceColumn } from './column.ts';

/**
 * A site's ice while its winter runs, changed in place; an {@link IceColumn} is a picture of it.
 *
 * A winter takes some thousand steps of half a dozen processes: a fresh object for each would cost
 * more than the physics.
 */
export interface SiteIce extends IceColumn {
	/** White ice that has frozen over the slush now lying under it. */
	crust_m: number;
	/**
	 * Heat that frost must take first: the warmth of open water before new ice can form, and what water
	 * pumped onto the ice has to lose beyond slush as deep.
	 */
	waterHeat_J_m2: number;
}

/** Open water without stored warmth, as on the day of freeze-up. */
export function openSite(): SiteIce {
	return {
		snow_m: 0,
		snowDensity_kg_m3: 0,
		slush_m: 0,
		white_m: 0,
		clear_m: 0,
		liquidFraction: 0,
		crust_m: 0,
		waterHeat_J_m2: 0
	};
}

/** The column as it is now. */
export function pictureOf(ice: SiteIce): IceColumn {
	const { snow_m, snowDensity_kg_m3, slush_m, white_m, clear_m, liquidFraction } = ice;
	return { snow_m, snowDensity_kg_m3, slush_m, white_m, clear_m, liquidFraction };
}

/** True while there is something to stand on or in: ice or slush. */
export function hasIce(ice: SiteIce): boolean {
	return ice.clear_m + ice.white_m + ice.slush_m > 0;
}
