/** Scatter where the ice is thick: of places about the site's mean, of holes about their place's. */
const PLACES_m = 0.035;
const HOLES_m = 0.03;
/** Thickness at which half of that is reached. */
const HALF_AT_m = 0.1;

/** A tape in a hole. [derived] */
export const TAPE_m = 0.01;

/**
 * Standard deviation of places about the site's mean thickness.
 *
 *   σ = 3.5 cm h/(h + 10 cm)
 *
 * Young ice differs most in its own measure, thick ice no more in centimetres than ice of 20 cm: 20 to
 * 50 % while it is thin and 5 to 15 % late in the winter [M-lo]. Its size by the measured winters, where
 * the model misses single holes by as much at 25 cm as at 60 cm [C].
 */
export function placeScatter_m(thickness_m: number): number {
	return PLACES_m * reached(thickness_m);
}

/** Of holes about their place's mean, in the same way up to 3 cm. */
export function holeScatter_m(thickness_m: number): number {
	return HOLES_m * reached(thickness_m);
}

/** Of a random spot about the site's mean, as a share of it, without the tape. */
export function spotFraction(thickness_m: number): number {
	return SPOTS_m / (thickness_m + HALF_AT_m);
}

const SPOTS_m = Math.hypot(PLACES_m, HOLES_m);

function reached(thickness_m: number): number {
	return thickness_m / (thickness_m + HALF_AT_m);
}
