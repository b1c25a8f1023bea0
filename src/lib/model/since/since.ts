import type { IsoDate } from '../calendar.ts';
import type { Reading } from '../reading.ts';
import type { SiteEvent } from '../site-winter.ts';
import type { PartDay } from './part-day.ts';

/** A minute of the lake's own clock. */
export interface LakeMinute {
	on: IsoDate;
	/** @example '14:00' */
	clock: string;
}

/**
 * What has been seen after the day of asking, up to now: of days whose weather is not in yet.
 *
 * It can take from an answer and never adds to one: warm hours, thin holes, bad cores, broken ice and
 * open water act at once; frost, thick holes and sound cores wait until their day is in.
 */
export interface Since {
	/** Today at the lake, the day of asking or later. */
	now: IsoDate;
	/** As far as hours were observed; sorted, all after the day of asking. */
	days: readonly PartDay[];
	/** Dated after the day of asking, up to now. */
	readings: readonly Reading[];
	/** Of the same days. */
	events: readonly SiteEvent[];
	/** Recorded on one of the same days. */
	iceOutOn: IsoDate | null;
	/** Hours above freezing in the last 24 that were observed; `null` where they are not told in hours. */
	warmLast_h: number | null;
	/** The end of what was observed without a break; `null` where it is not told in hours. */
	weatherTo: LakeMinute | null;
	/** So long has passed since then that it is no longer weather of today. */
	isWeatherOld: boolean;
}

/** Weather older than this is said to be, and days since that nobody observed count as gaps. Our choice. */
export const OLD_WEATHER_h = 36;
