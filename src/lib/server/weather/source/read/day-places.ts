import type { JsonValue } from 'jsonpath-rfc9535';
import { isoDate } from '#lib/model/calendar.ts';
import { dayOfStamp } from '../../cells/stamp-time.ts';
import type { LakeClock } from '../../cells/zone.ts';
import type { Stamp, TimeForm } from '../schema.ts';
import { stampOf, textOf } from './moments.ts';
import type { Tally } from './tally.ts';

/** Where each day stands in an answer, by its number: once, or more often. */
export type DayPlaces = Map<number, number[]>;

/** A day that is stamped at its end is the one before. */
export function dayPlaces(
	raw: readonly JsonValue[],
	form: TimeForm,
	stamp: Stamp,
	clock: LakeClock,
	tally: Tally
): DayPlaces {
	const places: DayPlaces = new Map();
	for (const [place, each] of raw.entries()) {
		const read = stampOf(textOf(each), form);
		if (typeof read === 'string') {
			tally.add('unreadTimes', null, read, null);
			continue;
		}
		const day = dayOfStamp(read, clock) - (stamp === 'end' ? 1 : 0);
		const before = places.get(day);
		if (before) {
			before.push(place);
			tally.add('repeatedTimes', null, isoDate(day), isoDate(day));
		} else places.set(day, [place]);
	}
	return places;
}
