import { dayOfYear, type IsoDate } from '../calendar.ts';
import { clearSky_W_m2 } from '../sun.ts';
import { ROTTING_SUN_W_m2 } from '../warm-spell.ts';

/** Less than this has not begun to go: a reading can do it. Our choice. */
const PAST_THICKEST_m = 0.02;

export interface LateInput {
	latitude: number;
	asOf: IsoDate;
	/** Estimated whole thickness of the winter's days up to `asOf`, in their order. */
	total_m: readonly number[];
	/** A warm-spell rule is in force. */
	isWarm: boolean;
}

/**
 * Whether the late rules of weak spots apply: the sun is high enough to rot ice, a thaw is on, or the
 * site is thinner than it has been.
 *
 * The sun is the clear sky's mean of the day above 150 W/m², after midwinter. Our rule, derived.
 */
export function isLate({ latitude, asOf, total_m, isWarm }: LateInput): boolean {
	const peak_m = Math.max(0, ...total_m);
	const isThinner = (total_m.at(-1) ?? 0) < peak_m - PAST_THICKEST_m;
	return isWarm || isThinner || hasHighSun(latitude, asOf);
}

function hasHighSun(latitude: number, asOf: IsoDate): boolean {
	const today_W_m2 = clearSky_W_m2(latitude, dayOfYear(asOf));
	const soon_W_m2 = clearSky_W_m2(latitude, dayOfYear(asOf) + 1);
	return today_W_m2 > ROTTING_SUN_W_m2 && soon_W_m2 > today_W_m2;
}
