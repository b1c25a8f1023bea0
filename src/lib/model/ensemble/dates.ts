import { addDays, type IsoDate } from '../calendar.ts';

/** Probability from which a requirement is expected to be met. */
export const EXPECTED = 0.5;
/** Probability from which it is likely to be met. */
export const LIKELY = 0.9;
/** Days in a row that it takes. */
const IN_A_ROW = 3;

/** How likely a load's requirement is met on a day; `null` where it is not estimated. */
export interface ThicknessChance {
	on: IsoDate;
	pThickness: number | null;
}

/** A load's dates. A warm spell does not erase them. */
export interface LoadDates {
	/** First day of three in a row with a probability of 0.5 or more. */
	expectedFrom: IsoDate | null;
	/** The same with 0.9. */
	likelyFrom: IsoDate | null;
	/** Last day before it falls under 0.5 for the rest of what is told; `null` while it does not. */
	until: IsoDate | null;
}

/**
 * From when and until when a load's requirement is met, over all days told: those that have passed
 * count too.
 *
 * A day that is missing or not estimated ends a row. Without an expected day there is no last one.
 */
export function loadDates(days: readonly ThicknessChance[]): LoadDates {
	const expectedFrom = firstInARow(days, EXPECTED);
	return {
		expectedFrom,
		likelyFrom: firstInARow(days, LIKELY),
		until: expectedFrom === null ? null : lastBeforeFall(days)
	};
}

function firstInARow(days: readonly ThicknessChance[], least: number): IsoDate | null {
	let row: IsoDate[] = [];
	for (const { on, pThickness } of days) {
		const last = row.at(-1);
		if (last !== undefined && addDays(last, 1) !== on) row = [];
		row = (pThickness ?? 0) >= least ? [...row, on] : [];
		if (row.length === IN_A_ROW) return row[0] ?? null;
	}
	return null;
}

function lastBeforeFall(days: readonly ThicknessChance[]): IsoDate | null {
	const last = days.findLastIndex(({ pThickness }) => (pThickness ?? 0) >= EXPECTED);
	const falls = days.slice(last + 1).some(({ pThickness }) => pThickness !== null);
	return falls ? (days[last]?.on ?? null) : null;
}
