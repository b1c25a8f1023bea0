import type { JsonValue } from 'jsonpath-rfc9535';
import { isoDate, type IsoDate } from '#lib/model/calendar.ts';
import { dayEnd_s } from './day-end.ts';
import { dayOfStamp } from '../../cells/stamp-time.ts';
import type { LakeClock } from '../../cells/zone.ts';
import type { Stamp, TimeForm } from '../schema.ts';
import type { WallClock } from './clock-of.ts';
import { stampOf, textOf } from './moments.ts';
import type { Tally } from './tally.ts';

/** Where each day stands in an answer, by its number: once, or more often. */
export type DayPlaces = Map<number, number[]>;

/** The clock of times without an offset, and that of the lake. */
export interface DayClocks {
	own: WallClock | null;
	lake: LakeClock;
}

/**
 * Where each day stands; a day that is stamped at its end is the one before. Notes when each ends.
 */
export function dayPlaces(
	raw: readonly JsonValue[],
	form: TimeForm,
	stamp: Stamp,
	clocks: DayClocks,
	tally: Tally,
	ends_s: Map<IsoDate, number>
): DayPlaces {
	const places: DayPlaces = new Map();
	for (const [place, each] of raw.entries()) {
		const read = stampOf(textOf(each), form);
		if (typeof read === 'string') {
			tally.add('unreadTimes', null, read, null);
			continue;
		}
		const day = dayOfStamp(read, clocks.lake) - (stamp === 'end' ? 1 : 0);
		ends_s.set(isoDate(day), dayEnd_s(day, read, clocks));
		const before = places.get(day);
		if (before) {
			before.push(place);
			tally.add('repeatedTimes', null, isoDate(day), isoDate(day));
		} else places.set(day, [place]);
	}
	return places;
}
