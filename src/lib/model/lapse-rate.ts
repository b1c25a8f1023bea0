const LAPSE_K_m = 0.0065; // [ICAO1993] 6.5 K a kilometre, from sea level to 11 km [M-hi]

/**
 * What a temperature measured at one elevation is made warmer by at another, negative higher up.
 *
 *   ΔT = 0.0065 K/m (z_measured - z_wanted)
 *
 * The mean fall of the standard atmosphere. Under a winter's inversion the valley is the colder
 * place and the correction has the wrong sign, so that it must be seen and can be switched off.
 * Source: [ICAO1993].
 *
 * @example elevationShift_K(1000, 0) // => 6.5
 */
export function elevationShift_K(measuredAt_m: number, wantedAt_m: number): number {
	return LAPSE_K_m * (measuredAt_m - wantedAt_m);
}
