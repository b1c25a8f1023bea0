import type { IsoDate } from './calendar.ts';
import { CERTAIN, doubtOf, type Layered } from './doubt.ts';
import type { Doubt } from './lower-bound.ts';
import type { Reading } from './reading.ts';
import type { SeasonDay } from './season.ts';
import { sinceAnchor, type SinceAnchor } from './since-anchor.ts';

/** A day of a season with the doubt of its column. */
export interface DoubtedDay {
	day: SeasonDay;
	since: SinceAnchor;
	doubt: Layered<Doubt>;
}

/** A season with its doubt. `freezeUp` is what a freeze-up between two days adds, by day. */
export function withDoubt(
	days: readonly SeasonDay[],
	readings: readonly Reading[],
	freezeUp: ReadonlyMap<IsoDate, Layered<number>> = new Map()
): DoubtedDay[] {
	const accounts = sinceAnchor(days, readings);
	return days.flatMap((day, index) => {
		const since = accounts[index];
		if (!since) return [];
		return { day, since, doubt: doubtOf(day, since, freezeUp.get(day.on) ?? CERTAIN) };
	});
}
