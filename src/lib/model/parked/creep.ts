/**
 * Time in which ice gives by creep as much as at once. Our choice, short: Glen's law with the rate of
 * [CuffeyPaterson2010] [M-hi] gives one to one and a half hours at 0 to -2 °C under 0.3 MPa [C], and ice
 * creeps a few times faster in the first hours.
 */
const RELAXES_h = 0.25;

/**
 * How many times further a sheet has sunk under a load that has stood there than when it came.
 *
 *   w / w0 = √(1 + t/τ),  τ = ¼ h
 *
 * A plate that flows has a stiffness that goes by one over the time, and the sag goes by one over the root
 * of the stiffness [C]. That it goes on growing is what was measured [FrederkingGold1976] [M-med]. Not for
 * rotting ice. @example creepFactor(2) // => 3
 */
export function creepFactor(parked_h: number): number {
	return Math.sqrt(1 + Math.max(0, parked_h) / RELAXES_h);
}

/** The time that a factor takes: the inverse of {@link creepFactor}. */
export function creepsTo_h(factor: number): number {
	return RELAXES_h * Math.max(0, factor ** 2 - 1);
}
