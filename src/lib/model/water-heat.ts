import { WATER_kg_m3, WATER_J_kgK, CLEAR_ICE_FUSION_J_m3, FUSION_J_kg } from './constants.ts';

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

/** Ice melted from below by a heat flow from the water over a time. */
export function bottomMelt_m(water_W_m2: number, duration_s: number): number {
	return (water_W_m2 * duration_s) / CLEAR_ICE_FUSION_J_m3;
}

/** Mass of ice that the warmth of rain melts, small beside what rain does to snow. */
export function rainMelt_kg_m2(rain_kg_m2: number, air_degC: number): number {
	return (rain_kg_m2 * WATER_J_kgK * Math.max(0, air_degC)) / FUSION_J_kg;
}

/** Depth of the same melt as {@link rainMelt_kg_m2}, in clear ice. */
export function rainMelt_m(rain_m: number, air_degC: number): number {
	return (rainMelt_kg_m2(rain_m * WATER_kg_m3, air_degC) * FUSION_J_kg) / CLEAR_ICE_FUSION_J_m3;
}
