import { addDays, type IsoDate } from '#lib/model/calendar.ts';
import type { LakeDigest } from '#lib/server/services/digests/digest.ts';

/** The next day on which something about a lake's loads is expected to change. */
export interface NextDate {
	on: IsoDate;
	kind: 'until' | 'expected' | 'likely';
	/** Of the loads whose day it is. */
	loads: string[];
}

/** A last day within this time goes before any that is better news. Our choice. */
const SOON_d = 21;

/**
 * What comes next: the last day of a load where that is near, else the first day on which one is
 * expected or likely, else the last day of one. `null` where no day is named.
 */
export function nextDate({ today, loads }: LakeDigest): NextDate | null {
	const days = loads.flatMap(({ name, until, expectedFrom, likelyFrom }) => [
		{ on: until, kind: 'until' as const, name },
		{ on: expectedFrom, kind: 'expected' as const, name },
		{ on: likelyFrom, kind: 'likely' as const, name }
	]);
	const coming = days.flatMap(({ on, ...what }) =>
		on !== null && on > today ? [{ on, ...what }] : []
	);
	const first = (some: typeof coming) => some.toSorted((a, b) => a.on.localeCompare(b.on))[0];
	const ends = coming.filter(({ kind }) => kind === 'until');
	const next =
		first(ends.filter(({ on }) => on <= addDays(today, SOON_d))) ??
		first(coming.filter(({ kind }) => kind !== 'until')) ??
		first(ends);
	if (next === undefined) return null;
	const same = coming.filter(({ on, kind }) => on === next.on && kind === next.kind);
	return { on: next.on, kind: next.kind, loads: same.map(({ name }) => name) };
}
