import { SOLAR_CONSTANT_W_m2 } from './constants.ts';

const RADIANS = Math.PI / 180;

/**
 * Sunshine on level ground under a clear sky, mean of the 24 hours; zero in polar night.
 *
 *   S = (0.75 + 2e-5 z) (S0/π) E (ω sin φ sin δ + cos φ cos δ sin ω)
 *
 * ω is the hour angle of sunset, E the inverse square of the sun's distance. Mountains that shade
 * the lake are not known. Source: [Allen1998] eq. 21 and 37 [M-hi].
 */
export function clearSky_W_m2(latitude: number, dayOfYear: number, elevation_m = 0): number {
	const year = (2 * Math.PI * dayOfYear) / 365;
	const distance = 1 + 0.033 * Math.cos(year);
	const phi = latitude * RADIANS;
	const delta = declination(dayOfYear);
	const omega = sunsetAngle(phi, delta);
	const geometry =
		omega * Math.sin(phi) * Math.sin(delta) + Math.cos(phi) * Math.cos(delta) * Math.sin(omega);
	const outside_W_m2 = (SOLAR_CONSTANT_W_m2 / Math.PI) * distance * Math.max(0, geometry);
	return (0.75 + 2e-5 * Math.max(0, elevation_m)) * outside_W_m2;
}

/** Sine of the sun's height at noon, zero when it stays below the horizon. */
export function noonSunHeight(latitude: number, dayOfYear: number): number {
	return Math.max(0, Math.cos(latitude * RADIANS - declination(dayOfYear)));
}

/** The sun's declination, radians. Source: [Allen1998] eq. 24 [M-hi]. */
function declination(dayOfYear: number): number {
	return 0.409 * Math.sin((2 * Math.PI * dayOfYear) / 365 - 1.39);
}

function sunsetAngle(phi: number, delta: number): number {
	const cosine = -Math.tan(phi) * Math.tan(delta);
	return Math.acos(Math.min(1, Math.max(-1, cosine)));
}
