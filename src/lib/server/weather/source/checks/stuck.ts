import type { DayValues, WeatherHour } from '#lib/model/hours-to-days.ts';
import type { Fault } from '../contract.ts';
import { hourText } from '../lake-days.ts';

/** Hours and days at one and the same value that no air keeps. Common practice, no source. */
const FINE_h = 24;
const COARSE_h = 48;
const DAYS = 5;

export interface Unstuck<Time> {
	times: Time[];
	fault: Fault | null;
}

/** Hours without the temperatures of a thermometer that stood still; the first of each run is kept. */
export function withoutStuckHours(
	hours: readonly WeatherHour[],
	samples: readonly number[],
	timeZone: string
): Unstuck<WeatherHour> {
	const shortest = samples.every(Number.isInteger) ? COARSE_h : FINE_h;
	const runs = runsOf(
		hours,
		({ air_degC }) => (air_degC === null ? null : String(air_degC)),
		shortest
	);
	const stuck = new Set(runs.flatMap(({ first, last }) => range(first + 1, last)));
	const [run] = runs;
	if (!run) return { times: [...hours], fault: null };
	const start = hours[run.first];
	const at = hourText(start?.at_s ?? 0, timeZone);
	return {
		times: hours.map((hour, at) => (stuck.has(at) ? { ...hour, air_degC: null } : hour)),
		fault: standing(stuck.size, 'hours', start?.air_degC ?? 0, at)
	};
}

export function withoutStuckDays(days: readonly DayValues[]): Unstuck<DayValues> {
	const text = ({ air_degC, min_degC, max_degC }: DayValues) =>
		air_degC === null && min_degC === null ? null : `${air_degC} ${min_degC} ${max_degC}`;
	const runs = runsOf(days, text, DAYS);
	const stuck = new Set(runs.flatMap(({ first, last }) => range(first + 1, last)));
	const [run] = runs;
	const start = run ? days[run.first] : undefined;
	if (!start) return { times: [...days], fault: null };
	const unknown = { air_degC: null, min_degC: null, max_degC: null };
	return {
		times: days.map((day, at) => (stuck.has(at) ? { ...day, ...unknown } : day)),
		fault: standing(stuck.size, 'days', start.air_degC ?? start.min_degC ?? 0, start.on)
	};
}

interface Run {
	first: number;
	last: number;
}

function runsOf<Time>(
	times: readonly Time[],
	textOf: (time: Time) => string | null,
	shortest: number
): Run[] {
	const runs: Run[] = [];
	let first = 0;
	for (let at = 1; at <= times.length; at += 1) {
		const [before, now] = [times[at - 1], times[at]];
		const text = before === undefined ? null : textOf(before);
		if (now !== undefined && text !== null && textOf(now) === text) continue;
		if (text !== null && at - first >= shortest) runs.push({ first, last: at - 1 });
		first = at;
	}
	return runs;
}

function range(first: number, last: number): number[] {
	return Array.from({ length: last - first + 1 }, (_, at) => first + at);
}

function standing(count: number, what: string, air_degC: number, at: string): Fault {
	const shown = `${Math.round(air_degC * 10) / 10} °C`.replace('-', '−');
	const text = `The temperature stands still at ${shown} from ${at} on: ${count} ${what} are taken as unknown, since no air does that. The station may be out of order; look at it, or set another source before this one.`;
	return { code: 'stuck', text, count, at };
}
