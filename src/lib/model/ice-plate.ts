import { GRAVITY_m_s2, WATER_kg_m3 } from './constants.ts';

const YOUNG_Pa = 6e9; // short-term flexure, range 6 to 9 GPa [M-med]
const POISSON = 0.33; // [M-med]

/**
 * How hard a sheet is to bend.
 *
 *   D = E h³ / (12 (1-ν²))
 *
 * Elastic, short term, sound ice. Source: [Squire1996] [M-hi].
 */
export function stiffness_Nm(thickness_m: number, young_Pa = YOUNG_Pa, poisson = POISSON): number {
	return (young_Pa * thickness_m ** 3) / (12 * (1 - poisson ** 2));
}

/**
 * How far a floating sheet spreads a load: its characteristic length.
 *
 *   ℓ = (E h³ / (12 (1-ν²) ρ_w g))^¼
 *
 * Elastic, short term, sound ice. Source: [Squire1996] [M-hi]. @example spread_m(0.3) // => 6.27
 */
export function spread_m(thickness_m: number, young_Pa = YOUNG_Pa, poisson = POISSON): number {
	const stiffness = stiffness_Nm(thickness_m, young_Pa, poisson);
	return (stiffness / (WATER_kg_m3 * GRAVITY_m_s2)) ** 0.25;
}

/**
 * How far a floating sheet gives under a load at once.
 *
 *   w0 = P / (8 ρ_w ℓ²)
 *
 * Under the middle of a point load far from shores and cracks; elastic, short term. Infinite without ice.
 * Source: [Squire1996] [M-hi]. @example elasticSag_m(2000, 0.3) // => 0.0064
 */
export function elasticSag_m(mass_kg: number, thickness_m: number): number {
	return mass_kg <= 0 ? 0 : mass_kg / (8 * WATER_kg_m3 * spread_m(thickness_m) ** 2);
}

/**
 * Speed at which the wave under the ice runs with a vehicle over shallow water: √(g d).
 *
 * The shallow bound of the general relation; at depths beyond some 10 m the ice is slower.
 * Source: [Squire1996] [M-hi]. @example shallowWave_m_s(2) // => 4.43
 */
export function shallowWave_m_s(depth_m: number): number {
	return Math.sqrt(GRAVITY_m_s2 * depth_m);
}
