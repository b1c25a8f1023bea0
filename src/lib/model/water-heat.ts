import { WATER_kg_m3, WATER_J_kgK, CLEAR_ICE_FUSION_J_m3 } from './constants.ts';

const PUBLISHED_C = 1622; // W s^0.8 m^-2.6 K^-1, [Ashton1986] [M-hi]

/**
 * Heat transfer from flowing water to the ice above it, per degree above freezing.
 *
 *   h_wi = 1622 V^0.8 D^-0.2
 *
 * Turbulent flow under a smooth cover. A flume study found about twice as much at 0.1 m/s.
 * Source: [Ashton1986] [M-hi]. @example currentExchange_W_m2K(0.5, 2) // => 811
 */
export function currentExchange_W_m2K(current_m_s: number, depth_m: number): number {
	return PUBLISHED_C * Math.max(0, current_m_s) ** 0.8 * depth_m ** -0.2;
}

/** Clear ice that the warmth of rain melts, small beside what rain does to snow: the model leaves it out. */
export function rainMelt_m(rain_m: number, air_degC: number): number {
	return (rain_m * WATER_kg_m3 * WATER_J_kgK * Math.max(0, air_degC)) / CLEAR_ICE_FUSION_J_m3;
}
