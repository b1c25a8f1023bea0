import type { IsoDate, WinterId } from '../calendar.ts';
import type { IceOutDates, LoadStatus } from '../forecast.ts';
import type { FloodAhead } from '../flood-ahead.ts';
import type { ThawAhead } from './thaw-ahead.ts';

/** All that may be told of a lake's site on a day. */
export interface TellingFacts {
	/** The site's name, where the lake has several. */
	site: string | null;
	/** Today at the lake. */
	today: IsoDate;
	winter: WinterId;
	/** The day that the estimate is of; behind today where the weather ends before it. */
	asOf: IsoDate;
	/** Those that were chosen; one without an estimate is not among them. */
	loads: LoadFacts[];
	/** A warm spell that is in force, with its sentences. */
	spell: { since: IsoDate; text: string } | null;
	thaw: ThawAhead | null;
	flood: FloodAhead | null;
	iceOut: IceOutDates | null;
	/** From which day on another reading is due; `null` while none is asked for. */
	readingDueOn: IsoDate | null;
	/** The last hole on record this winter that was not told by somebody else. */
	lastHoleOn: IsoDate | null;
	/** The last observation, when it is too old; `null` while it is not, or out of the season. */
	stale: { since: IsoDate; age_h: number } | null;
	/** The local authority's day for having everything off, as the user typed it. */
	removalOn: IsoDate | null;
}

export interface LoadFacts {
	id: string;
	name: string;
	status: LoadStatus;
	/** Why the status is what it is. */
	reason: string;
	expectedFrom: IsoDate | null;
	likelyFrom: IsoDate | null;
	until: IsoDate | null;
	/** The latest day to have it off; `null` where none is known, or it is not likely before. */
	offBy: IsoDate | null;
}
