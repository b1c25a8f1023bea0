import { setImmediate as nextTurn } from 'node:timers/promises';
import type { IsoDate } from '#lib/model/calendar.ts';
import { LakeClock } from '../../cells/zone.ts';
import type { Column } from './columns.ts';
import { dayPlaces, type DayPlaces } from './day-places.ts';
import { daysOf, daysOfRole, type DayRoles } from './days.ts';
import { byRole, isRainAlone, samplesOf, type Mapped, type Reading } from './mapped.ts';
import { Tally } from './tally.ts';

/** Reads columns as days of the lake's calendar. */
export async function mapDays(
	reading: Reading,
	columns: readonly Column[],
	mapped: Mapped
): Promise<void> {
	const { mapping, place, decimal } = reading;
	const { tally } = mapped;
	const placesOf = allPlaces(reading, tally, mapped.dayEnds_s);
	const roles: DayRoles = {};
	for (const [role, ofRole] of byRole(columns)) {
		roles[role] = daysOfRole(ofRole, { placesOf, decimal, tally }, samplesOf(mapped, role));
		await nextTurn();
	}
	mapped.days = daysOf(roles, isRainAlone(mapping), tally).filter(
		({ on }) => on >= place.from && on <= place.to
	);
}

function allPlaces(
	{ mapping: { time }, place: { timeZone }, clock }: Reading,
	tally: Tally,
	ends_s: Map<IsoDate, number>
): (column: Column) => DayPlaces {
	const clocks = { own: clock, lake: new LakeClock(timeZone, 'local') };
	const known = new Map<string, DayPlaces>();
	return ({ axis, spec }) => {
		const stamp = spec.stamp ?? time.stamp;
		const key = `${stamp} ${axis.path}`;
		// Days that are read again for another stamp are not counted again.
		const counts = known.size === 0 ? tally : new Tally();
		const places = known.get(key) ?? dayPlaces(axis.raw, time.form, stamp, clocks, counts, ends_s);
		known.set(key, places);
		return places;
	};
}
