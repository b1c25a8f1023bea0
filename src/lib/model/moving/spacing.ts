/**
 * Distance from one load to the next, in thicknesses of ice. "About 100" is the rule of trade [M-med]; the
 * spacings of [TM5852] are 53 to 97 thicknesses of what it asks [C].
 */
const THICKNESSES = 100;

/** Between parked vehicles: 50 feet, [MinnesotaDNR2022] [R2]. */
export const PARKED_APART_m = 15;

/**
 * Distance from which loads on ice of this thickness don't bear on each other.
 *
 *   s = 100 h
 *
 * Nearer ones are added together. @example spacing_m(0.3) // => 30
 */
export function spacing_m(thickness_m: number): number {
	return THICKNESSES * thickness_m;
}
