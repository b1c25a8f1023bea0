import type { IsoDate } from '../calendar.ts';
import type { WeatherDay } from '../weather.ts';

/** Ice of less than this is easily broken out by wind. Our choice, no source; see {@link windyDays}. */
export const WIND_BREAKS_BELOW_m = 0.1;
/** Mean wind of a day that is spoken of: some 6 m/s, a moderate breeze. Our choice, no source. */
export const WINDY_m_s = 6;

export interface WindyDay {
	on: IsoDate;
	wind_m_s: number;
	source: 'observed' | 'forecast';
	/** Share of holes that would show less than 10 cm on it; `null` where it is not estimated. */
	pThin: number | null;
}

/**
 * Days on which wind blows over ice that it may break out again.
 *
 * That wind breaks up early sheets fast is published [SMHI] [R]; no threshold of wind or thickness was
 * found. A gust counts more than a day's mean, and a wide lake more than a sheltered one. Days that are
 * only climate say nothing of wind.
 */
export function windyDays(
	weather: readonly WeatherDay[],
	pThinOn: (on: IsoDate) => number | null
): WindyDay[] {
	return weather.flatMap((day) => {
		const { on, wind_m_s, source } = day;
		if (source !== 'observed' && source !== 'forecast') return [];
		if (wind_m_s === null || wind_m_s < WINDY_m_s) return [];
		return [{ on, wind_m_s, source, pThin: pThinOn(on) }];
	});
}
