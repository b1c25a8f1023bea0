import type { IsoDate, WinterId } from './calendar.ts';

/** Something that people or wind did to a site's ice. Acts at the start of its day. */
export type SiteEvent =
	| { kind: 'reopened'; on: IsoDate; refrozeOn: IsoDate | null }
	| { kind: 'cleared'; on: IsoDate; snow_m: number }
	| { kind: 'packed'; on: IsoDate; density_kg_m3: number | null }
	| { kind: 'pumped'; on: IsoDate; water_m: number };

/** One site's winter as people recorded it. */
export interface SiteWinter {
	winter: WinterId;
	/** First day of complete, lasting ice; with `freezeUpBy`, the first day it may have been. */
	freezeUpOn: IsoDate | null;
	/** The last day it may have been, when freeze-up is known only as between two days. */
	freezeUpBy: IsoDate | null;
	iceOutOn: IsoDate | null;
	events: SiteEvent[];
}
