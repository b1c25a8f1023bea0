import { daysBetween, type IsoDate } from './calendar.ts';
import type { Reading } from './reading.ts';

/** So long a place where the ice broke is said before all else. Our choice, no source. */
export const BROKE_LATELY_d = 14;

/** The last time that the ice broke under somebody or something, of the two weeks up to a day. */
export function brokeLately(
	readings: readonly Pick<Reading, 'on' | 'kind' | 'place'>[],
	asOf: IsoDate
): { on: IsoDate; place: string | null } | null {
	const last = readings
		.filter(({ on, kind }) => kind === 'wentThrough' && isLately(on, asOf))
		.toSorted((a, b) => a.on.localeCompare(b.on))
		.at(-1);
	return last ? { on: last.on, place: last.place } : null;
}

/** @example isLately('2026-12-01', '2026-12-15') // => true */
export function isLately(on: IsoDate, asOf: IsoDate): boolean {
	const age_d = daysBetween(on, asOf);
	return age_d >= 0 && age_d <= BROKE_LATELY_d;
}
