import { addDays, type IsoDate } from '../calendar.ts';
import type { Reading } from '../reading.ts';

export interface ReadingDueInput {
	readings: readonly Reading[];
	/** First day on which any chosen load is expected; `null` without one. */
	expectedFrom: IsoDate | null;
	/** A status is withheld: nobody is to be sent onto the ice. */
	isWithheld: boolean;
	after_d: number;
	today: IsoDate;
}

/** The last day on which holes were drilled or a tool did not get through, by the one who tells. */
export function lastHoleOn(readings: readonly Reading[]): IsoDate | null {
	const own = readings.filter(({ kind, secondHand }) => kind !== 'wentThrough' && !secondHand);
	return own.reduce<IsoDate | null>(
		(last, { on }) => (last === null || on > last ? on : last),
		null
	);
}

/**
 * From which day on another reading is due: so many days after the last, or after the day from which
 * a load is expected where nobody has drilled yet.
 *
 * `null` while nothing is expected or a status is withheld: nobody is asked onto ice that is not
 * thought to be there, or that a thaw weakens. Our rule, cautious.
 */
export function readingDueOn(input: ReadingDueInput): IsoDate | null {
	const { readings, expectedFrom, isWithheld, after_d, today } = input;
	if (isWithheld) return null;
	const last = lastHoleOn(readings);
	if (last !== null) return addDays(last, after_d);
	if (expectedFrom === null || expectedFrom > today) return null;
	return addDays(expectedFrom, after_d);
}
