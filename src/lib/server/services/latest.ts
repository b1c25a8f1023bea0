import type { IsoDate } from '#lib/model/calendar.ts';
import type { Context } from '../context.ts';
import type { LakeRecord } from './lakes.ts';
import { daySpan, localDay } from './local-day.ts';

/**
 * The day that is under way at a lake, and the instant in seconds since 1970 began in UTC: what is later
 * has not been observed. An invented lake may call a later day today.
 */
export function latestOf(
	{ now }: Pick<Context, 'now'>,
	{ timeZone, today }: Pick<LakeRecord, 'timeZone' | 'today'>
): { on: IsoDate; at_s: number } {
	const at = now();
	const on = localDay(at, timeZone);
	if (today === null || today <= on) return { on, at_s: at.getTime() / 1000 };
	return { on: today, at_s: daySpan(today, timeZone).end_s };
}
