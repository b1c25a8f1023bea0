import { exposureFraction, treelessFraction } from './exposure.ts';
import { FITTED, type Fitted } from './fitted.ts';
import type { LakeFacts } from './lake.ts';

export { FITTED, type Fitted } from './fitted.ts';

/**
 * What the ice model does not know from first principles, for one lake: a flat record of numbers.
 * Ranges and sources stand beside the values in `fitted.ts`.
 */
export interface Parameters {
	/** Heat that the air takes from a bare surface, per degree. */
	readonly exchange_W_m2K: number;
	/** Heat from the water to the underside of the ice. */
	readonly waterHeat_W_m2: number;
	/** Snow that comes to lie on the ice, per reported snowfall. */
	readonly snowKeptFraction: number;
	/** Conductivity of lake snow, in that of land snow of the same density. */
	readonly snowConductivityRatio: number;
	readonly settledSnow_kg_m3: number;
	readonly settling_h: number;
	/** Settling slows with cold by exp(-c |T|). */
	readonly settlingCold_1_K: number;
	/** Part of the lake where no more snow lies than goes with the ice. */
	readonly thinSnowFraction: number;
	/** Most depth of it there, in the thickness of the ice. */
	readonly thinSnowRatio: number;
	/** Snow that each degree-day of thaw wets and packs, whether or not it melts for good. */
	readonly wetting_kg_m2degCd: number;
	readonly wetSnow_kg_m3: number;
	/** Snow that each degree-day of lasting thaw melts for good. */
	readonly snowMelt_kg_m2degCd: number;
	/** Thaw that each degree-day of frost of the same day undoes. */
	readonly refreezeFraction: number;
	/** Meltwater and rain that stay in the snow as slush; the rest runs off. */
	readonly soakedFraction: number;
	/** Snow in a cubic metre of slush. */
	readonly slushMatrix_kg_m3: number;
	/** Unevenness of the snow load, as a share of its mean. */
	readonly snowSpreadFraction: number;
	/** Time the water takes to come up. */
	readonly flooding_d: number;
	readonly iceMelt_m_degCd: number;
	/** Sunshine under the usual clouds, in that of a clear sky. */
	readonly cloudFraction: number;
	readonly snowAlbedo: number;
	readonly whiteAlbedo: number;
	readonly clearAlbedo: number;
	/** Absorbed sunshine that melts inside the ice, not at its top. */
	readonly insideFraction: number;
	/** Absorbed sunshine that warms the water and melts the ice from below. */
	readonly belowFraction: number;
	/** Net loss of a freezing surface to the sky, under the usual clouds. */
	readonly skyLoss_W_m2: number;
	/** Sound thickness below which rotten ice breaks up. */
	readonly breakUp_m: number;
}

/** Of the snow that a wide lake keeps, what wind takes where no trees stand. Not fitted [M-lo]. */
const TREELESS_LOSS = 0.6;

/**
 * The parameters of a lake: one set for all lakes, bent by how freely wind reaches the ice.
 *
 *   x = x_sheltered + (x_exposed - x_sheltered) e
 *
 * Above or beyond the trees wind takes part of the snow: there the cover on lakes has about half the
 * insulation of that on land, less on ice blown clear [Sturm2003] [R]. No such lake is among the
 * measured ones that the values were fitted to.
 */
export function parametersFor(lake: LakeFacts, fitted: Fitted = FITTED): Parameters {
	const { exchangeSheltered_W_m2K, exchangeExposed_W_m2K, keptSheltered, keptExposed, ...common } =
		fitted;
	const treeless = treelessFraction(lake);
	const exposed = 1 - (1 - exposureFraction(lake)) * (1 - treeless);
	const kept = between(keptSheltered, keptExposed, exposed);
	return {
		...common,
		exchange_W_m2K: between(exchangeSheltered_W_m2K, exchangeExposed_W_m2K, exposed),
		snowKeptFraction: kept * (1 - TREELESS_LOSS * treeless)
	};
}

function between(sheltered: number, exposed: number, share: number): number {
	return sheltered + (exposed - sheltered) * share;
}

/**
 * A copy to be changed in place, field by field.
 *
 * Written out, for engines keep the numbers of an object made by a spread in a way that allocates at
 * each change.
 */
export function copyParameters(p: Parameters): { -readonly [name in keyof Parameters]: number } {
	return {
		exchange_W_m2K: p.exchange_W_m2K,
		waterHeat_W_m2: p.waterHeat_W_m2,
		snowKeptFraction: p.snowKeptFraction,
		snowConductivityRatio: p.snowConductivityRatio,
		settledSnow_kg_m3: p.settledSnow_kg_m3,
		settling_h: p.settling_h,
		settlingCold_1_K: p.settlingCold_1_K,
		wetting_kg_m2degCd: p.wetting_kg_m2degCd,
		wetSnow_kg_m3: p.wetSnow_kg_m3,
		snowMelt_kg_m2degCd: p.snowMelt_kg_m2degCd,
		refreezeFraction: p.refreezeFraction,
		soakedFraction: p.soakedFraction,
		slushMatrix_kg_m3: p.slushMatrix_kg_m3,
		snowSpreadFraction: p.snowSpreadFraction,
		flooding_d: p.flooding_d,
		iceMelt_m_degCd: p.iceMelt_m_degCd,
		cloudFraction: p.cloudFraction,
		snowAlbedo: p.snowAlbedo,
		whiteAlbedo: p.whiteAlbedo,
		clearAlbedo: p.clearAlbedo,
		insideFraction: p.insideFraction,
		belowFraction: p.belowFraction,
		skyLoss_W_m2: p.skyLoss_W_m2,
		thinSnowFraction: p.thinSnowFraction,
		thinSnowRatio: p.thinSnowRatio,
		breakUp_m: p.breakUp_m
	};
}
