import type { IsoDate } from '../calendar.ts';
import { firstInARow, stretchFrom } from './stretches.ts';

/** Probability from which a requirement is expected to be met. */
export const EXPECTED = 0.5;
/** Probability from which it is likely to be met. */
export const LIKELY = 0.9;

/** How likely a load's requirement is met on a day; `null` where it is not estimated. */
export interface ThicknessChance {
	on: IsoDate;
	pThickness: number | null;
}

/** A load's dates. A warm spell does not erase them. */
export interface LoadDates {
	/** First day of three in a row with a probability of 0.5 or more. */
	expectedFrom: IsoDate | null;
	/** The same with 0.9, not after the last day. */
	likelyFrom: IsoDate | null;
	/**
	 * Last day of that stretch, or of the last that has begun by the day of asking: the next three days
	 * are under 0.5. `null` while it goes on to the end of what is told.
	 */
	until: IsoDate | null;
}

/**
 * From when and until when a load's requirement is met, over all days told: those that have passed
 * count too.
 *
 * A day that is missing or not estimated ends a row. Without an expected day there is no last one. What
 * comes again after a fall is not told before it has: a shelter that the snow sinks in February is not
 * expected until April because the snow is gone by then.
 */
export function loadDates(days: readonly ThicknessChance[], asOf: IsoDate): LoadDates {
	const first = firstInARow(days, EXPECTED);
	const likelyFrom = days[firstInARow(days, LIKELY)]?.on ?? null;
	const until = first < 0 ? null : untilFrom(days, first, asOf);
	return {
		expectedFrom: days[first]?.on ?? null,
		likelyFrom: likelyFrom === null || (until !== null && likelyFrom > until) ? null : likelyFrom,
		until
	};
}

function untilFrom(days: readonly ThicknessChance[], first: number, asOf: IsoDate): IsoDate | null {
	const { last, falls } = stretchFrom(days, EXPECTED, first);
	if (!falls) return null;
	const next = firstInARow(days, EXPECTED, last + 1);
	const nextOn = days[next]?.on;
	return nextOn !== undefined && nextOn <= asOf
		? untilFrom(days, next, asOf)
		: (days[last]?.on ?? null);
}
