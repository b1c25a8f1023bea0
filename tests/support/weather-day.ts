import type { IsoDate } from '#lib/model/calendar.ts';
import type { WeatherDay } from '#lib/model/weather.ts';

/** A day of which nothing is known; tests add the one value they are about. */
export function weatherDay(on: IsoDate, known: Partial<WeatherDay> = {}): WeatherDay {
	return {
		on,
		source: 'observed',
		air_degC: null,
		min_degC: null,
		max_degC: null,
		freezing_degCd: null,
		thawing_degCd: null,
		aboveFreezing_h: null,
		precipitation_kg_m2: null,
		snowfall_kg_m2: null,
		landSnow_m: null,
		wind_m_s: null,
		...known
	};
}
