import { addDays, daysBetween } from '#lib/model/calendar.ts';
import type { DayValues, WeatherHour } from '#lib/model/hours-to-days.ts';
import type { Fault } from '../contract.ts';
import { hourText } from '../lake-days.ts';

const HOUR_s = 3600;

/** Hours without a temperature, from `from_s` to the last that has one, or `null`. */
export function hourGaps(
	hours: readonly WeatherHour[],
	from_s: number,
	timeZone: string
): Fault | null {
	const known = new Set(hours.filter(({ air_degC }) => air_degC !== null).map(({ at_s }) => at_s));
	const last_s = [...known].reduce((most, at_s) => Math.max(most, at_s), -Infinity);
	const first_s = [...known].reduce((least, at_s) => Math.min(least, at_s), Infinity);
	if (known.size === 0) return null;
	// Hours of the lake's clock may begin at any quarter of an hour by UTC.
	const start_s = first_s - Math.floor(Math.max(0, first_s - from_s) / HOUR_s) * HOUR_s;
	const expected = Math.round((last_s - start_s) / HOUR_s) + 1;
	const count = expected - known.size;
	if (count <= 0) return null;
	let at_s = start_s;
	while (known.has(at_s)) at_s += HOUR_s;
	return missing(count, expected, 'hours', hourText(at_s, timeZone));
}

/** Days without a temperature, from `from` to the last that has one, or `null`. */
export function dayGaps(days: readonly DayValues[], from: string): Fault | null {
	const known = new Set(days.filter(hasTemperature).map(({ on }) => on));
	const last = [...known].toSorted().at(-1);
	if (last === undefined) return null;
	const expected = daysBetween(from, last) + 1;
	const count = expected - known.size;
	if (count <= 0) return null;
	let on = from;
	while (known.has(on)) on = addDays(on, 1);
	return missing(count, expected, 'days', on);
}

export function hasTemperature({ air_degC, min_degC, max_degC }: DayValues): boolean {
	return air_degC !== null || (min_degC !== null && max_degC !== null);
}

function missing(count: number, expected: number, what: string, at: string): Fault {
	const text = `${count.toLocaleString('en')} of ${expected.toLocaleString('en')} ${what} have no temperature, the first ${at}. They stay unknown and widen the doubt; a second source or a CSV can fill them.`;
	return { code: 'missing', text, count, at };
}
