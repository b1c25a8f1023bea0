/** Exact conversions at the rim of the model, which itself is SI. */

export const INCH_m = 0.0254;
export const POUND_kg = 0.45359237;
export const SHORT_TON_kg = 2000 * POUND_kg;
/** Of a difference; the offset of 32 is in {@link celsius}. */
export const FAHRENHEIT_STEPS_PER_K = 1.8;

/** @example celsius(28) // => -2.2222 */
export function celsius(air_degF: number): number {
	return (air_degF - 32) / FAHRENHEIT_STEPS_PER_K;
}

/** @example fahrenheit(-40) // => -40 */
export function fahrenheit(air_degC: number): number {
	return air_degC * FAHRENHEIT_STEPS_PER_K + 32;
}

/** Degree-days, which have no offset. @example degreeDays_degFd(100) // => 180 */
export function degreeDays_degFd(degreeDays_degCd: number): number {
	return degreeDays_degCd * FAHRENHEIT_STEPS_PER_K;
}

/** @example degreeDays_degCd(13) // => 7.2222 */
export function degreeDays_degCd(degreeDays_degFd: number): number {
	return degreeDays_degFd / FAHRENHEIT_STEPS_PER_K;
}

/**
 * A coefficient of h = α √FDD from inches and °F·d to centimetres and °C·d.
 *
 *   α[cm] = 2.54 √1.8 α[in]
 */
export function stefanCoefficient_cm(alpha_in: number): number {
	return alpha_in * INCH_m * 100 * Math.sqrt(FAHRENHEIT_STEPS_PER_K);
}

/** Inverse of {@link stefanCoefficient_cm}. */
export function stefanCoefficient_in(alpha_cm: number): number {
	return alpha_cm / stefanCoefficient_cm(1);
}

/** A melt coefficient from cm/(°C·d) to in/(°F·d). @example meltCoefficient_in(0.6) // => 0.1312 */
export function meltCoefficient_in(melt_cm: number): number {
	return melt_cm / (INCH_m * 100) / FAHRENHEIT_STEPS_PER_K;
}
