import { effective_m } from '../bearing.ts';
import { buoyancy_kg_m2, freeboard_m } from '../flooding.ts';
import { elasticSag_m } from '../ice-plate.ts';
import { creepFactor, creepsTo_h } from './creep.ts';

/** Thicker ice is not looked for. */
const THICKEST_m = 20;
const ROUNDS = 60;

/** A load that stands on snow-covered ice. */
export interface Standing {
	/** All that counts at one place. */
	mass_kg: number;
	parked_h: number;
	snow_kg_m2: number;
}

/**
 * Effective thickness whose top stays above the water under a load for as long as it stands there.
 *
 *   freeboard(h, snow) ≥ w0(P, h) √(1 + t/τ)
 *
 * Water over the ice is weight that nothing carries: where this fails the load is not carried, whatever a
 * chart says. As if all of it were clear ice, which floats lower than white. Rises with each of its inputs.
 * Source: the criterion [FrederkingGold1976] [M-med]; {@link creepFactor} is ours.
 * @example floatingThickness_m({ mass_kg: 900, parked_h: 48, snow_kg_m2: 0 }) // => 0.360
 */
export function floatingThickness_m({ mass_kg, parked_h, snow_kg_m2 }: Standing): number {
	const factor = creepFactor(parked_h);
	const isAfloat = (h_m: number): boolean =>
		freeboard_m(buoyancy_kg_m2(h_m, 0), snow_kg_m2) >= factor * elasticSag_m(mass_kg, h_m);
	let [low_m, high_m] = [0, THICKEST_m];
	for (let round = 0; round < ROUNDS; round++) {
		const middle_m = (low_m + high_m) / 2;
		if (isAfloat(middle_m)) high_m = middle_m;
		else low_m = middle_m;
	}
	return high_m;
}

/** How a sheet floats under a load that stands on it. */
export interface Afloat {
	/** Top of the ice over the water before the load comes; negative: water stands on it. */
	freeboard_m: number;
	/** How far it gives at once, and by the end of the stay. */
	sagAtOnce_m: number;
	sag_m: number;
	/** How long its top stays above the water; zero: not at all. */
	lasts_h: number;
}

/** @throws RangeError without ice. */
export function afloatUnder(
	{ mass_kg, parked_h, snow_kg_m2 }: Standing,
	ice: { clear_m: number; white_m: number }
): Afloat {
	const carrying_m = effective_m(ice);
	if (carrying_m <= 0) throw new RangeError(`ice must be thicker than 0 m, got ${carrying_m}`);
	const above_m = freeboard_m(buoyancy_kg_m2(ice.clear_m, ice.white_m), snow_kg_m2);
	const sagAtOnce_m = elasticSag_m(mass_kg, carrying_m);
	return {
		freeboard_m: above_m,
		sagAtOnce_m,
		sag_m: sagAtOnce_m * creepFactor(parked_h),
		lasts_h: above_m <= sagAtOnce_m ? 0 : creepsTo_h(above_m / sagAtOnce_m)
	};
}
