import { GRAVITY_m_s2 } from './constants.ts';
import { INCH_m, POUND_kg } from './units.ts';

/**
 * Lower bound of the failures that Gold collected, 50 lb/in² rounded to the worksite guides' figure.
 * Larger values presume an engineered and monitored ice road. [Gold1971] [R]
 */
export const GOLD_A_kg_cm2 = 3.5;
const CM2_PER_M2 = 1e4;

/** Share of clear ice's worth that white ice is given. [TM5852] [R], read as one half. */
export const WHITE_ICE_FRACTION = 0.5;

/**
 * Thickness of clear ice that clear and white ice together count as; slush counts nothing.
 *
 *   h_eff = h_clear + ½ h_white
 *
 * Layers frozen to each other. Guides disagree on white ice [Barrette2015]; the lowest is kept.
 * Source: [TM5852] [R]. @example effective_m({ clear_m: 0.15, white_m: 0.1 }) // => 0.2
 */
export function effective_m(ice: { clear_m: number; white_m: number }): number {
	return ice.clear_m + WHITE_ICE_FRACTION * ice.white_m;
}

/**
 * Load that sound floating ice of this effective thickness is allowed by Gold's formula.
 *
 *   P = A h² · Π load factors
 *
 * Moving or briefly standing loads on new, clear, hard ice; not for light loads on thin ice, where
 * flaws decide and a published minimum counts instead. Source: [Gold1971] [R].
 * @example allowable_kg(0.2) // => 1400
 */
export function allowable_kg(
	effective_m: number,
	loadFactor = 1,
	gold_kg_cm2 = GOLD_A_kg_cm2
): number {
	return gold_kg_cm2 * CM2_PER_M2 * Math.max(0, effective_m) ** 2 * loadFactor;
}

/**
 * Effective thickness that Gold's formula asks for: the inverse of {@link allowable_kg}.
 *
 *   h = √(P / (A · Π load factors))
 *
 * Source: [Gold1971] [R]. @example goldThickness_m(2000) // => 0.2390
 */
export function goldThickness_m(
	mass_kg: number,
	loadFactor = 1,
	gold_kg_cm2 = GOLD_A_kg_cm2
): number {
	return Math.sqrt(Math.max(0, mass_kg) / (gold_kg_cm2 * CM2_PER_M2 * loadFactor));
}

/** Gold's coefficient in pounds per square inch. @example goldCoefficient_psi(3.5) // => 49.78 */
export function goldCoefficient_psi(gold_kg_cm2: number): number {
	return (gold_kg_cm2 * CM2_PER_M2 * INCH_m ** 2) / POUND_kg;
}

/** Gold's coefficient in megapascals. @example goldCoefficient_MPa(3.5) // => 0.3432 */
export function goldCoefficient_MPa(gold_kg_cm2: number): number {
	return (gold_kg_cm2 * CM2_PER_M2 * GRAVITY_m_s2) / 1e6;
}

/**
 * The US Army's rough guide for a short-term load, in the units it was published in.
 *
 *   h[in] = 4 S √P[short tons],  S = 2 on white ice or when parked over two hours
 *
 * Far less cautious than A = 3.5 unless S = 2: for checks against print only.
 * Source: [TM5852] [R]; the factor S [Smith2004] [R].
 */
export function armyRule_in(load_shortTons: number, factor: 1 | 2 = 1): number {
	return 4 * factor * Math.sqrt(Math.max(0, load_shortTons));
}
