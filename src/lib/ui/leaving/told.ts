import type { IsoDate } from '#lib/model/calendar.ts';
import type { Leaving } from '#lib/model/leaving/leaving.ts';
import type { OffBy } from '#lib/model/leaving/off-by.ts';

/** A load as the page tells it. */
export interface LeavingLoad extends Omit<Leaving['loads'][number], 'id'> {
	id: string;
	name: string;
	required_m: number | null;
	/** A warm spell doubles what it asks now; the days go by what it asks otherwise. */
	isDoubled: boolean;
	/** It is expected to be met by now, or was. */
	wasExpected: boolean;
	/** By everything that is known, the removal date too. */
	offBy: OffBy;
	/** By the ice alone. */
	byIce: OffBy;
	/** The days of lead are typed, not our own choice. */
	isLeadTyped: boolean;
}

/** What the words of the page go by. */
export interface ComingOffData {
	asOf: IsoDate;
	today: IsoDate;
	/** The day that days are counted from: today, or the day of asking in a view of the past. */
	now: IsoDate;
	iceOutOn: IsoDate | null;
	removalOn: IsoDate | null;
	leaving: (Omit<Leaving, 'loads'> & { loads: LeavingLoad[] }) | null;
}
