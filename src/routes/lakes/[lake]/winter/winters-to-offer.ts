import { addDays, winterOf, type IsoDate, type WinterId } from '#lib/model/calendar.ts';

/** Winters with anything on record, and the latest ones at hand to begin a record. */
export function wintersToOffer(recorded: readonly WinterId[], today: IsoDate): WinterId[] {
	const latest = [0, 1, 2].map((ago) => winterOf(addDays(today, -365 * ago)));
	return [...new Set([...latest, ...recorded])].toSorted().toReversed();
}
