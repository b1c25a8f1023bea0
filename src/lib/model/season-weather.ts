import { addDays, dayNumber, dayOfYear, isoDate, type IsoDate } from './calendar.ts';
import { meanAir_degC } from './degree-days.ts';
import type { WeatherDay } from './weather.ts';

/** A day of the season: what was reported of it, and the temperature its neighbours suggest. */
export interface SeasonWeatherDay {
	on: IsoDate;
	dayOfYear: number;
	/** `null` when nobody reported the day. */
	reported: WeatherDay | null;
	/** Reported mean, else interpolated between the nearest days that have one, else `null`. */
	likelyAir_degC: number | null;
}

/**
 * Every day from `from` to `to`, and never past the day after the last one reported: the state at
 * its start is still known. Nothing when the weather ends before. The weather is sorted.
 */
export function seasonWeather(
	weather: readonly WeatherDay[],
	from: IsoDate,
	to: IsoDate
): SeasonWeatherDay[] {
	const days: SeasonWeatherDay[] = [];
	const lastReported = weather.at(-1)?.on;
	if (lastReported === undefined) return days;
	const dayAfter = addDays(lastReported, 1);
	let index = firstFrom(weather, from);
	let day = dayNumber(from);
	let ofYear = dayOfYear(from);
	for (let on = from; on <= to && on <= dayAfter; on = isoDate(++day), ofYear++) {
		if (on.endsWith('-01-01')) ofYear = 1;
		const next = weather[index];
		const reported = next?.on === on ? next : null;
		if (reported !== null) index++;
		days.push({
			on,
			dayOfYear: ofYear,
			reported,
			likelyAir_degC: reported === null ? null : meanAir_degC(reported)
		});
	}
	interpolate(days);
	return days;
}

/** Index of the first day on or after `from`, by bisection. */
function firstFrom(weather: readonly WeatherDay[], from: IsoDate): number {
	let low = 0;
	let high = weather.length;
	while (low < high) {
		const middle = (low + high) >> 1;
		if ((weather[middle]?.on ?? '') < from) low = middle + 1;
		else high = middle;
	}
	return low;
}

function interpolate(days: SeasonWeatherDay[]): void {
	let known = -1;
	for (let i = 0; i <= days.length; i++) {
		const here = days[i];
		if (here !== undefined && here.likelyAir_degC === null) continue;
		fill(days, known, i);
		known = i;
	}
}

/** Fills the days between two known ones; past either end the nearest known one holds. */
function fill(days: SeasonWeatherDay[], before: number, after: number): void {
	const left = days[before]?.likelyAir_degC ?? days[after]?.likelyAir_degC ?? null;
	const right = days[after]?.likelyAir_degC ?? left;
	if (left === null || right === null) return;
	for (let i = before + 1; i < after; i++) {
		const day = days[i];
		if (day === undefined) continue;
		day.likelyAir_degC = left + ((right - left) * (i - before)) / (after - before);
	}
}
