import { addDays, type IsoDate } from '#lib/model/calendar.ts';
import { nameAmid } from '#lib/model/load-name.ts';
import type { LakeDigest } from '#lib/server/services/digests/digest.ts';

/** The next day that matters to whoever has something on a lake, or will have. */
export interface NextDate {
	on: IsoDate;
	kind: 'removal' | 'offBy' | 'until' | 'expected' | 'likely';
	/** Of the loads whose day it is, as they are called amid a sentence. */
	loads: string[];
}

/** A last day within this time goes before any that is better news. Our choice. */
const SOON_d = 21;

/** Those by which something has to be off. On the day itself they still matter. */
const ENDS = new Set<NextDate['kind']>(['removal', 'offBy', 'until']);

/**
 * What comes next: the day by which something has to be off where that is near, else the first day on
 * which a load is expected or likely, else the day by which the first has to be off. `null` where no
 * day is named.
 *
 * A load is to be off by the warm end of what may come, or by its last day where no warm end is known;
 * all of them by the local removal date, which is said where both are the same day.
 */
export function nextDate({ today, loads, removalOn }: LakeDigest): NextDate | null {
	const days = loads.flatMap((load) => {
		const { until, offBy, expectedFrom, likelyFrom } = load;
		const name = nameAmid(load);
		return [
			offBy === null
				? { on: until, kind: 'until' as const, name }
				: { on: offBy, kind: 'offBy' as const, name },
			{ on: expectedFrom, kind: 'expected' as const, name },
			{ on: likelyFrom, kind: 'likely' as const, name }
		];
	});
	const removal = { on: removalOn, kind: 'removal' as const, name: 'everything' };
	const coming = [removal, ...days].flatMap(({ on, ...what }) =>
		on !== null && (on > today || (on === today && ENDS.has(what.kind))) ? [{ on, ...what }] : []
	);
	const first = (some: typeof coming) => some.toSorted((a, b) => a.on.localeCompare(b.on))[0];
	const ends = coming.filter(({ kind }) => ENDS.has(kind));
	const next =
		first(ends.filter(({ on }) => on <= addDays(today, SOON_d))) ??
		first(coming.filter(({ kind }) => !ENDS.has(kind))) ??
		first(ends);
	if (next === undefined) return null;
	const same = coming.filter(({ on, kind }) => on === next.on && kind === next.kind);
	return { on: next.on, kind: next.kind, loads: same.map(({ name }) => name) };
}
