import { dayFromHours, type DaySpan, type DayValues, type WeatherHour } from './hours-to-days.ts';
import { observedDay } from './observed-day.ts';
import type { WeatherDay } from './weather.ts';

/** What one origin, a file or a source, says of a day. */
export interface OriginDay {
	/** Sorted, of this day alone. */
	hours: readonly WeatherHour[];
	daily: DayValues | null;
}

/**
 * One day from all that is said of it, the most trusted origin first; `null` when nothing is.
 *
 * Each quantity comes from the first that knows it. The hours of a less trusted origin fill those
 * that a more trusted one lacks; a daily record stands before less trusted hours. What fell is taken
 * as a whole, lest the snow of one be more than the precipitation of another.
 */
export function joinedDay(
	span: DaySpan,
	origins: readonly OriginDay[],
	latitude: number
): WeatherDay | null {
	let joined: WeatherDay | null = null;
	let hours: WeatherHour[] = [];
	for (const { hours: own, daily } of origins) {
		hours = hours.length === 0 ? [...own] : filledBy(hours, own);
		const ofHours = hours.length > 0 ? dayFromHours(span, hours) : null;
		const day = observedDay(ofHours, daily, latitude);
		if (day !== null) joined = joined === null ? day : completedBy(joined, day);
	}
	return joined;
}

/** Each hour's values where it has them, else those of `others`. Both are sorted. */
export function filledBy(
	hours: readonly WeatherHour[],
	others: readonly WeatherHour[]
): WeatherHour[] {
	if (others.length === 0) return [...hours];
	const filled = new Map(hours.map((hour) => [hour.at_s, hour]));
	for (const other of others) {
		const hour = filled.get(other.at_s);
		filled.set(other.at_s, hour === undefined ? other : filledHour(hour, other));
	}
	return [...filled.values()].toSorted((a, b) => a.at_s - b.at_s);
}

function filledHour(hour: WeatherHour, other: WeatherHour): WeatherHour {
	return {
		at_s: hour.at_s,
		air_degC: hour.air_degC ?? other.air_degC,
		...fallOf(hour, other),
		landSnow_m: hour.landSnow_m ?? other.landSnow_m,
		wind_m_s: hour.wind_m_s ?? other.wind_m_s
	};
}

/** The day, with what it does not know from another record of it. */
export function completedBy(day: WeatherDay, other: WeatherDay): WeatherDay {
	return {
		...day,
		...(day.air_degC === null && other.air_degC !== null ? temperaturesOf(other) : {}),
		...fallOf(day, other),
		landSnow_m: day.landSnow_m ?? other.landSnow_m,
		wind_m_s: day.wind_m_s ?? other.wind_m_s
	};
}

type Fall = Pick<WeatherDay, 'precipitation_kg_m2' | 'snowfall_kg_m2'>;

function fallOf(first: Fall, second: Fall): Fall {
	const isKnown = first.precipitation_kg_m2 !== null || first.snowfall_kg_m2 !== null;
	const { precipitation_kg_m2, snowfall_kg_m2 } = isKnown ? first : second;
	return { precipitation_kg_m2, snowfall_kg_m2 };
}

function temperaturesOf(day: WeatherDay) {
	const { air_degC, min_degC, max_degC, freezing_degCd, thawing_degCd, aboveFreezing_h } = day;
	return { air_degC, min_degC, max_degC, freezing_degCd, thawing_degCd, aboveFreezing_h };
}
