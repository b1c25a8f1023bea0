import type { IsoDate } from './calendar.ts';
import { UNKNOWN_AIR, type WeatherDay } from './weather.ts';

/** The weather of one hour. `null` is unknown, never zero. */
export interface WeatherHour {
	/** Start of the hour, epoch seconds. */
	at_s: number;
	air_degC: number | null;
	precipitation_kg_m2: number | null;
	snowfall_kg_m2: number | null;
	landSnow_m: number | null;
	wind_m_s: number | null;
}

/** What is known of a day, wherever it comes from. */
export type DayValues = Omit<WeatherDay, 'source'>;

/** A day of the lake's calendar on the clock: 23 to 25 hours, `end_s` excluded. */
export interface DaySpan {
	on: IsoDate;
	start_s: number;
	end_s: number;
}

const S_PER_HOUR = 3600;

/** Known hours that make a day's temperature complete. Common practice, no source. */
const COMPLETE_HOURS = 20;

/** A record every three hours is complete too: the main and intermediate hours of weather stations. */
const LONGEST_STEP_S = 3 * S_PER_HOUR;

/** Hours that a day's precipitation may miss. A sum with more of them missing is unknown. */
const MISSING_PRECIPITATION_HOURS = 4;

/**
 * A day from its hours, which may be given in any order and together with hours of other days.
 *
 *   freezing = N/n Σ max(0, -T)/24     thawing = N/n Σ max(0, T)/24     N hours in the day, n known
 *
 * Temperature counts as known from 20 hours on, or from fewer that never lie more than three hours
 * apart; else it is `null`, and only the hours seen above freezing are told, if any were: so many at
 * least, which a thaw is judged by. Precipitation and snowfall are known when at
 * most four hours are missing. Missing hours of a known day are taken to be like its others.
 */
export function dayFromHours(span: DaySpan, hours: readonly WeatherHour[]): DayValues {
	const inDay = hours
		.filter(({ at_s }) => at_s >= span.start_s && at_s < span.end_s)
		.toSorted((a, b) => a.at_s - b.at_s);
	const hoursInDay = (span.end_s - span.start_s) / S_PER_HOUR;
	return {
		on: span.on,
		...temperatures(span, inDay, hoursInDay),
		precipitation_kg_m2: sumOfDay(known(inDay, 'precipitation_kg_m2'), hoursInDay),
		snowfall_kg_m2: sumOfDay(known(inDay, 'snowfall_kg_m2'), hoursInDay),
		landSnow_m: known(inDay, 'landSnow_m').at(-1) ?? null,
		wind_m_s: mean(known(inDay, 'wind_m_s'))
	};
}

type Temperatures = Pick<
	DayValues,
	'air_degC' | 'min_degC' | 'max_degC' | 'freezing_degCd' | 'thawing_degCd' | 'aboveFreezing_h'
>;

function temperatures(
	span: DaySpan,
	inDay: readonly WeatherHour[],
	hoursInDay: number
): Temperatures {
	const withAir = inDay.filter(({ air_degC }) => air_degC !== null);
	if (withAir.length < COMPLETE_HOURS && !isEvenlySpread(span, withAir))
		return { ...UNKNOWN_AIR, aboveFreezing_h: warmAtLeast_h(withAir) };
	const air = known(withAir, 'air_degC');
	const hoursEach = hoursInDay / air.length;
	return {
		air_degC: mean(air),
		min_degC: Math.min(...air),
		max_degC: Math.max(...air),
		freezing_degCd: (sum(air.map((value) => Math.max(0, -value))) * hoursEach) / 24,
		thawing_degCd: (sum(air.map((value) => Math.max(0, value))) * hoursEach) / 24,
		aboveFreezing_h: Math.min(24, air.filter((value) => value > 0).length * hoursEach)
	};
}

/** `null` where none were seen: that there were none is not known. */
function warmAtLeast_h(withAir: readonly WeatherHour[]): number | null {
	const warm_h = withAir.filter(({ air_degC }) => (air_degC ?? 0) > 0).length;
	return warm_h > 0 ? Math.min(24, warm_h) : null;
}

function isEvenlySpread({ start_s, end_s }: DaySpan, hours: readonly WeatherHour[]): boolean {
	const stamps = hours.map(({ at_s }) => at_s);
	const edges = [start_s, ...stamps, end_s];
	return (
		stamps.length > 0 &&
		edges.slice(1).every((edge, index) => edge - (edges[index] ?? edge) <= LONGEST_STEP_S)
	);
}

function sumOfDay(values: readonly number[], hoursInDay: number): number | null {
	if (hoursInDay - values.length > MISSING_PRECIPITATION_HOURS) return null;
	return (sum(values) * hoursInDay) / values.length;
}

function known(hours: readonly WeatherHour[], field: Exclude<keyof WeatherHour, 'at_s'>): number[] {
	return hours.map((hour) => hour[field]).filter((value) => value !== null);
}

function mean(values: readonly number[]): number | null {
	return values.length > 0 ? sum(values) / values.length : null;
}

function sum(values: readonly number[]): number {
	return values.reduce((total, value) => total + value, 0);
}
