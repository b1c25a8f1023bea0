import type { IsoDate } from '../calendar.ts';
import type { Reading } from '../reading.ts';
import { isHeldOpen } from '../site-events.ts';
import type { SiteEvent, SiteWinter } from '../site-winter.ts';

/** What is known of one site's winter. */
export interface SiteRecord {
	record: SiteWinter;
	readings: Reading[];
}

/** The winter of a track, told as if it were any site's. */
export interface TrackRecord extends SiteRecord {
	/** Readings of the ice that the track was made on. */
	fromParent: string[];
	/** Days of the track's own work, sorted; what is dated to open water was none. */
	workedOn: IsoDate[];
}

/**
 * Puts a track's winter together: until its first work it is its parent's ice, with all that happened
 * to that and was drilled in it; from then on its own events and readings alone go on.
 *
 * Freeze-up and ice-out are the parent's, and water that opens there opens the track too: after it the
 * track is its parent's new ice until it is worked on again. A reading that the parent has of a day of
 * work tells the ice and no longer the snow; later ones only that the ice beside it was rotten, which a
 * sound core of the track's own lifts, and where it broke. Our own rule; nothing published was found.
 */
export function trackWinter(parent: SiteRecord, own: SiteRecord): TrackRecord {
	const worked = own.record.events.filter(({ on }) => isFrozen(on, parent.record));
	const workedOn = worked.map(({ on }) => on).toSorted();
	const opened = parent.record.events.filter(({ kind }) => kind === 'reopened').map(({ on }) => on);
	const work = { workedOn, opened };
	const shared = parent.readings.flatMap((reading) => sharedReading(reading, work));
	const events = parent.record.events.filter(
		(event) => event.kind === 'reopened' || !isWorked(event.on, work)
	);
	return {
		record: { ...parent.record, events: byDay([...events, ...own.record.events]) },
		readings: byDay([...shared, ...own.readings]),
		fromParent: shared.map(({ id }) => id),
		workedOn
	};
}

/** Work on open water is a slip of the date: it parts no ice from its parent's. */
function isFrozen(on: IsoDate, { freezeUpOn, events }: SiteWinter): boolean {
	return freezeUpOn !== null && on >= freezeUpOn && !isHeldOpen(events, on);
}

interface Work {
	workedOn: readonly IsoDate[];
	/** Days on which the parent opened again. */
	opened: readonly IsoDate[];
}

/** True when the track has been worked on by that day, it included, and did not open since. */
function isWorked(on: IsoDate, { workedOn, opened }: Work): boolean {
	return workedOn.some(
		(work) => work <= on && !opened.some((again) => again > work && again <= on)
	);
}

function sharedReading(reading: Reading, work: Work): Reading[] {
	if (!isWorked(reading.on, work)) return [reading];
	const earlier = { ...work, workedOn: work.workedOn.filter((on) => on < reading.on) };
	return isWorked(reading.on, earlier) ? onlyHarm(reading) : [withoutSnow(reading)];
}

/** A bad core beside the track, and ice that broke there, is feared of it too, as if somebody had told it. */
function onlyHarm(reading: Reading): Reading[] {
	const isBad = reading.core === 'wet' || reading.core === 'candled';
	return isBad || reading.kind === 'wentThrough'
		? [{ ...reading, holes: [], secondHand: true }]
		: [];
}

/** Holes that tell nothing else are left out. */
function withoutSnow(reading: Reading): Reading {
	const holes = reading.holes
		.map((hole) => ({ ...hole, snow_m: null, slush_m: null, freeboard_m: null }))
		.filter(
			({ total_m, clear_m, white_m }) => total_m !== null || clear_m !== null || white_m !== null
		);
	return { ...reading, holes };
}

/** Things of the same day stay in their order. */
function byDay<T extends Pick<SiteEvent, 'on'>>(things: T[]): T[] {
	return things.toSorted((a, b) => (a.on < b.on ? -1 : Number(a.on > b.on)));
}
