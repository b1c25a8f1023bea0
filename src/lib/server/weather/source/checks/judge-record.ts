import { addDays, type IsoDate } from '#lib/model/calendar.ts';
import type { WeatherHour } from '#lib/model/hours-to-days.ts';
import type { Fault } from '../contract.ts';
import { dayAt, hourText, startOfDay_s } from '../lake-days.ts';
import type { Mapped } from '../read/mapped.ts';
import { clockDoubt } from './clock-doubt.ts';
import { dayGaps, hasTemperature, hourGaps } from './gaps.ts';
import type { Judged, Judging, Question } from './judge.ts';
import { withoutSpikes } from './spiked.ts';
import { staleRecord } from './stale.ts';
import { withoutStuckDays, withoutStuckHours } from './stuck.ts';

/** A clock that is ahead by less is no news. */
const AHEAD_h = 2;

/** What was observed: stuck values and frost out of all bounds taken out, gaps, age and clock told. */
export function judgeRecord(
	{ part, reach, mapping }: Judging,
	ask: Question,
	{ hours, days }: Pick<Mapped, 'hours' | 'days'>,
	mapped: Mapped
): Judged {
	const { timeZone, from } = ask;
	const samples = mapped.samples.get('air') ?? [];
	const ofHours = withoutStuckHours(hours, samples, timeZone);
	const ofDays = withoutStuckDays(days);
	const used = withoutSpikes(ofHours.times, ofDays.times, timeZone);
	const isDaily = mapping.step === 'daily';
	const newest_s = isDaily
		? endOfDays_s(days.filter(hasTemperature).at(-1)?.on, timeZone)
		: endOfHours_s(hours);
	const lag_h = reach.lag_h ?? 0;
	const faults = [
		newest_s === null
			? null
			: staleRecord(new Date(newest_s * 1000), expectedAt(ask, isDaily), lag_h),
		ofHours.fault,
		ofDays.fault,
		...used.faults,
		part === 'history' ? ahead(mapped.hours, ask) : null,
		clockDoubt(ofHours.times, ask.longitude),
		hourGaps(hours, startOfDay_s(from, timeZone), timeZone),
		dayGaps(days, from)
	].filter((fault) => fault !== null);
	return { hours: used.hours, days: used.days, faults };
}

/** The end of what can have been observed by now. A day is observed when it is over. */
function expectedAt({ to, now, timeZone }: Question, isDaily: boolean): Date {
	const end_ms = startOfDay_s(addDays(to, 1), timeZone) * 1000;
	const now_ms = isDaily ? startOfDay_s(dayAt(now, timeZone), timeZone) * 1000 : now.getTime();
	return new Date(Math.min(end_ms, now_ms));
}

function endOfHours_s(hours: readonly WeatherHour[]): number | null {
	const last = hours.findLast(({ air_degC }) => air_degC !== null);
	return last ? last.at_s + 3600 : null;
}

function endOfDays_s(on: IsoDate | undefined, timeZone: string): number | null {
	return on === undefined ? null : startOfDay_s(addDays(on, 1), timeZone);
}

function ahead(hours: readonly WeatherHour[], { now, timeZone }: Question): Fault | null {
	const last = hours.findLast(({ air_degC }) => air_degC !== null);
	const ahead_h = last ? (last.at_s - now.getTime() / 1000) / 3600 : 0;
	if (!last || ahead_h < AHEAD_h) return null;
	const at = hourText(last.at_s, timeZone);
	const text = `Observations go up to ${at} at the lake, which is ${Math.round(ahead_h)} hours from now; those are left out. Check the time zone of the times, and the clock of the station.`;
	return { code: 'clockDoubt', text, at };
}
