import { shortDay } from './day.ts';
import { counted } from './number.ts';

const MINUTE_MS = 60_000;
const HOUR_MS = 3_600_000;
/** Older than this, hours say less than days. */
const HOURS_AS_HOURS = 240;

/** @example hoursAgo(5) // => '5 hours ago' */
export function hoursAgo(age_h: number): string {
	if (age_h < 1) return 'less than an hour ago';
	return age_h < HOURS_AS_HOURS
		? `${counted(Math.floor(age_h), 'hour')} ago`
		: `${counted(Math.floor(age_h / 24), 'day')} ago`;
}

/** How long ago, never told shorter than it is by more than its own unit. */
export function ago(at: Date, now: Date): string {
	const passed_ms = Math.max(0, now.getTime() - at.getTime());
	if (passed_ms < MINUTE_MS) return 'just now';
	return passed_ms < HOUR_MS
		? `${counted(Math.floor(passed_ms / MINUTE_MS), 'minute')} ago`
		: hoursAgo(passed_ms / HOUR_MS);
}

/** A clock time, with its day where that is not today's. @example moment(at, now, 'UTC') // => '24 Nov, 14:10' */
export function moment(at: Date, now: Date, timeZone: string): string {
	const [on, clock] = local(at, timeZone);
	const [today] = local(now, timeZone);
	return on === today ? clock : `${shortDay(on)}, ${clock}`;
}

/** The day and the time on a clock. */
function local(at: Date, timeZone: string): [on: string, clock: string] {
	const text = at.toLocaleString('sv-SE', { timeZone, hourCycle: 'h23' });
	return [text.slice(0, 10), text.slice(11, 16)];
}
