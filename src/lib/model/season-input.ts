import { isIsoDate } from './calendar.ts';
import { requireAmount, requireFinite } from './require-finite.ts';
import type { Reading } from './reading.ts';
import type { SeasonInput } from './season.ts';
import type { WeatherDay } from './weather.ts';

/**
 * The one check at the entrance of the model: inside, numbers are trusted.
 *
 * @throws RangeError naming what is wrong and its value
 */
export function checkSeasonInput(input: SeasonInput): void {
	checkDay('freezeUpOn', input.freezeUpOn);
	checkDay('until', input.until);
	if (input.openUntil !== undefined) checkDay('openUntil', input.openUntil);
	checkLake(input);
	if (input.stepsPerDay !== undefined && !(input.stepsPerDay >= 1))
		throw new RangeError(`stepsPerDay must be 1 or more, got ${input.stepsPerDay}`);
	for (const [name, value] of Object.entries(input.parameters ?? {})) requireFinite(name, value);
	checkOrder(input.weather);
	for (const day of input.weather)
		if (day.on >= input.freezeUpOn && day.on <= input.until) checkWeather(day);
	for (const reading of input.readings ?? []) checkReading(reading);
	for (const event of input.events ?? []) checkDay(`event ${event.kind}`, event.on);
}

function checkDay(name: string, on: string): void {
	if (!isIsoDate(on)) throw new RangeError(`${name} must be a day YYYY-MM-DD, got "${on}"`);
}

function checkLake({ lake }: SeasonInput): void {
	requireFinite('latitude', lake.latitude);
	if (Math.abs(lake.latitude) > 90)
		throw new RangeError(`latitude must be within -90 and 90, got ${lake.latitude}`);
	if (lake.elevation_m !== null) requireFinite('elevation_m', lake.elevation_m);
	requireAmount('area_km2', lake.area_km2);
}

function checkOrder(weather: readonly WeatherDay[]): void {
	let before = '';
	for (const { on } of weather) {
		if (on <= before)
			throw new RangeError(`weather must be sorted by day, each once, got ${on} after ${before}`);
		before = on;
	}
}

function checkWeather(day: WeatherDay): void {
	for (const name of ['air_degC', 'min_degC', 'max_degC'] as const) {
		const value = day[name];
		if (value !== null) requireFinite(`${name} of ${day.on}`, value);
	}
	for (const name of AMOUNTS) {
		const value = day[name];
		if (value !== null && !(value >= 0 && value < Infinity))
			requireAmount(`${name} of ${day.on}`, value);
	}
}

const AMOUNTS = [
	'freezing_degCd',
	'thawing_degCd',
	'aboveFreezing_h',
	'precipitation_kg_m2',
	'snowfall_kg_m2',
	'landSnow_m'
] as const;

function checkReading(reading: Reading): void {
	checkDay(`reading ${reading.id}`, reading.on);
	for (const hole of reading.holes)
		for (const name of ['total_m', 'clear_m', 'white_m', 'snow_m', 'slush_m'] as const)
			requireAmount(`${name} of reading ${reading.id}`, hole[name]);
}
