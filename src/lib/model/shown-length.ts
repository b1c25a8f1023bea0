import { INCH_m } from './units.ts';

/** How a person wants numbers: lengths and temperatures, and masses apart from them. */
export interface UnitChoice {
	measure: 'metric' | 'imperial';
	mass: 'kg' | 'lb';
}

type Measure = UnitChoice['measure'];

/** Whole centimetres, half inches. */
export const LENGTH_STEP: Record<Measure, number> = { metric: 1, imperial: 0.5 };

const METRES: Record<Measure, number> = { metric: 0.01, imperial: INCH_m };
/** Keeps 15.24 cm at 6 inches although the division leaves 5.999…. */
const HAIR = 1e-6;

/** A length in centimetres or inches, unrounded. */
export function shownLength(length_m: number, measure: Measure): number {
	return length_m / METRES[measure];
}

/**
 * The same in steps that a tape can show: ice that is there rounded down, ice that is asked for up.
 *
 * @example steppedLength(0.319, 'metric', 'down') // => 31
 */
export function steppedLength(
	length_m: number,
	measure: Measure,
	rounding: 'down' | 'up' | 'nearest'
): number {
	const steps = shownLength(length_m, measure) / LENGTH_STEP[measure];
	const whole = {
		down: Math.floor(steps + HAIR),
		up: Math.ceil(steps - HAIR),
		nearest: Math.round(steps)
	}[rounding];
	return whole * LENGTH_STEP[measure];
}
