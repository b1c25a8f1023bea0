import type { IsoDate } from '#lib/model/calendar.ts';

const kept = new Map<IsoDate, number>();

/**
 * Where a day begins on the charts' axis, which counts in the reader's own time zone. A chart asks
 * for the same days once for each of its curves. @example midnightOf('2027-01-12')
 */
export function midnightOf(on: IsoDate): number {
	const known = kept.get(on);
	if (known !== undefined) return known;
	const [year = 0, month = 1, day = 1] = on.split('-').map(Number);
	const at_ms = new Date(year, month - 1, day).getTime();
	kept.set(on, at_ms);
	return at_ms;
}
