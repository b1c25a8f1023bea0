import type { IsoDate } from '../calendar.ts';
import { dayDegrees } from '../degree-days.ts';
import type { WeatherDay } from '../weather.ts';

/** Frost of a day and its night. */
export interface Night {
	on: IsoDate;
	source: 'observed' | 'forecast';
	min_degC: number | null;
	/** Hours of the day below freezing. */
	below_h: number;
	freezing_degCd: number;
	thawing_degCd: number;
	/** Six hours below freezing or more, as many as six above weaken. Our choice. */
	refreezes: boolean;
}

const REFREEZING_h = 6;
const BACK_d = 3;
const AHEAD_d = 7;

/**
 * The last three days observed and the next seven that are forecast: whether they freeze again.
 *
 * A cold night makes white ice of the water at the top. It gives back no strength that thaw has taken
 * inside, and ends no warm-spell rule.
 */
export function nightsAround(
	weather: readonly WeatherDay[],
	asOf: IsoDate,
	latitude: number
): Night[] {
	const known = weather.flatMap((day) => nightOf(day, latitude));
	const past = known.filter(({ on, source }) => on <= asOf && source === 'observed');
	const ahead = known.filter(({ on, source }) => on > asOf && source === 'forecast');
	return [...past.slice(-BACK_d), ...ahead.slice(0, AHEAD_d)];
}

function nightOf(day: WeatherDay, latitude: number): Night[] {
	const { on, source, min_degC } = day;
	if (source !== 'observed' && source !== 'forecast') return [];
	const degrees = dayDegrees(day, latitude);
	if (degrees === null) return [];
	const below_h = 24 - degrees.aboveFreezing_h;
	const { freezing_degCd, thawing_degCd } = degrees;
	const refreezes = below_h >= REFREEZING_h;
	return [{ on, source, min_degC, below_h, freezing_degCd, thawing_degCd, refreezes }];
}
