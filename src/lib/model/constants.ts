export const WATER_kg_m3 = 1000; // fresh water near 0 °C [M-hi]
export const CLEAR_ICE_kg_m3 = 916; // [R] [AshtonLakeIce]
export const WHITE_ICE_kg_m3 = 880; // range 800 to 900 [M-med]

export const CLEAR_ICE_W_mK = 2.24; // [R] [AshtonLakeIce]
export const WHITE_ICE_W_mK = 2.0; // range 1.75 to 2.1, 5 % air by Maxwell's rule [C] [Maxwell1873]

export const FUSION_J_kg = 3.34e5; // [R] [AshtonLakeIce]
export const WATER_J_kgK = 4186; // near 15 °C; 4217 at 0 °C [M-hi]
export const CLEAR_ICE_FUSION_J_m3 = CLEAR_ICE_kg_m3 * FUSION_J_kg; // 3.0594e8 [C]

export const GRAVITY_m_s2 = 9.81;
export const SOLAR_CONSTANT_W_m2 = 1361; // [M-hi] [KoppLean2011]
export const DAY_s = 86_400;
export const HOUR_s = 3_600;
