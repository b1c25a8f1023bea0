import { addDays, daysBetween, type IsoDate } from './calendar.ts';
import type { SiteWinter } from './site-winter.ts';

/** The days a lake may have frozen over. */
export interface FreezeUpSpan {
	first: IsoDate;
	middle: IsoDate;
	last: IsoDate;
}

/** First, middle and last day that freeze-up may have been; `null` when none is recorded. */
export function freezeUpSpan(record: SiteWinter): FreezeUpSpan | null {
	const first = record.freezeUpOn;
	if (first === null) return null;
	const last = record.freezeUpBy !== null && record.freezeUpBy > first ? record.freezeUpBy : first;
	return { first, middle: addDays(first, Math.floor(daysBetween(first, last) / 2)), last };
}
