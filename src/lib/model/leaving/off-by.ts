import { addDays, type IsoDate } from '../calendar.ts';
import type { LastDays } from './last-days.ts';

/** What sets the day by which a load has to be off. */
export type OffReason = 'removalDate' | 'thickness' | 'snow' | 'warmSpell';

export interface OffBy {
	/** The last day to have it on the ice; `null` where nothing that is known sets one. */
	on: IsoDate | null;
	reason: OffReason | null;
	/** The day to begin, with the days that it takes to get it free. */
	beginOn: IsoDate | null;
	lead_d: number;
}

export interface OffByInput {
	days: LastDays & {
		/** What ends them is snow that sinks it, not thin ice. */
		isEndedBySnow: boolean;
	};
	/** From when a warm spell is in force for good; `null`: not told. */
	spellFrom: IsoDate | null;
	/** The local removal date, as typed: by then everything has to be off. */
	removalOn: IsoDate | null;
	asOf: IsoDate;
	lead_d: number;
}

/**
 * The latest day to have a load off: the earliest of the local removal date, the warm end of its
 * thickness or of the snow that it floats under, and the day before a warm spell that lasts. The
 * removal date stands where it is the same day. Never before the day of asking: what should be off by
 * now has that day.
 */
export function offBy({ days, spellFrom, removalOn, asOf, lead_d }: OffByInput): OffBy {
	const { warmEnd } = days;
	const thick = warmEnd.kind === 'until' ? warmEnd.on : warmEnd.kind === 'never' ? asOf : null;
	const all: [IsoDate | null, OffReason][] = [
		[removalOn, 'removalDate'],
		[thick, days.isEndedBySnow ? 'snow' : 'thickness'],
		[spellFrom === null ? null : addDays(spellFrom, -1), 'warmSpell']
	];
	const [on, reason] = all.reduce<[IsoDate | null, OffReason | null]>(
		(first, [day, why]) =>
			day !== null && (first[0] === null || day < first[0]) ? [day, why] : first,
		[null, null]
	);
	if (on === null) return { on, reason, beginOn: null, lead_d };
	const last = on < asOf ? asOf : on;
	return { on: last, reason, beginOn: addDays(last, -lead_d), lead_d };
}

/** Days of lead for what stands frozen in, where nobody typed any. Our choice, no source. */
export const SHELTER_LEAD_d = 7;

/** Longer than a night, and it freezes in. Our choice, no source. */
const STANDS_h = 24;

/** The days of lead of a load that nobody typed any for. */
export function usualLead_d(load: { use: string | null; parked_h: number }): number {
	return load.use === 'truckWithShelter' || load.parked_h >= STANDS_h ? SHELTER_LEAD_d : 0;
}
