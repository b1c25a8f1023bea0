import type { IsoDate } from '../calendar.ts';
import { firstInARow, stretchFrom, type Stretch } from './stretches.ts';

/** Probability from which a requirement is expected to be met. */
export const EXPECTED = 0.5;
/** Probability from which it is likely to be met. */
export const LIKELY = 0.9;

/** How likely a load's requirement is met on a day; `null` where it is not estimated. */
export interface ThicknessChance {
	on: IsoDate;
	pThickness: number | null;
}

/** A load's dates, of the stretch of days that {@link loadDates} tells. A warm spell does not erase them. */
export interface LoadDates {
	/** First day of three in a row with a probability of 0.5 or more. */
	expectedFrom: IsoDate | null;
	/** The same with 0.9, not after the last day. */
	likelyFrom: IsoDate | null;
	/** Last day: the next three are under 0.5. `null` while it goes on to the end of what is told. */
	until: IsoDate | null;
}

/**
 * From when and until when a load's requirement is met: the stretch of days that is not over on the day
 * of asking, else the last one that was.
 *
 * A day that is missing or not estimated ends a row. Without an expected day there is no last one. What
 * comes again after a fall is told once that stretch is over: a shelter that the snow sinks in February
 * is not expected until April because the snow is gone by then, and ice that went in November is
 * expected from the day on which there is enough again.
 */
export function loadDates(days: readonly ThicknessChance[], asOf: IsoDate): LoadDates {
	const told = toldStretch(days, asOf);
	if (told === null) return { expectedFrom: null, likelyFrom: null, until: null };
	const { first, last, falls } = told;
	const likely = firstInARow(days, LIKELY, first);
	return {
		expectedFrom: days[first]?.on ?? null,
		likelyFrom: falls && likely > last ? null : (days[likely]?.on ?? null),
		until: falls ? (days[last]?.on ?? null) : null
	};
}

function toldStretch(days: readonly ThicknessChance[], asOf: IsoDate): Stretch | null {
	let told: Stretch | null = null;
	for (let first = firstInARow(days, EXPECTED); first >= 0;) {
		told = stretchFrom(days, EXPECTED, first);
		if (!told.falls || (days[told.last]?.on ?? '') >= asOf) return told;
		first = firstInARow(days, EXPECTED, told.last + 1);
	}
	return told;
}
