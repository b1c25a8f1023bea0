import { dayNumber, isoDate, type IsoDate } from '../calendar.ts';
import type { LakeFacts } from '../lake.ts';
import { snowShare } from '../snow.ts';
import { usualPrecipitation_kg_m2 } from '../snow-prior.ts';
import type { WeatherDay } from '../weather.ts';
import { normalQuantile } from './random.ts';
import { usualAir_degC } from './usual-climate.ts';

const DAILY_SPREAD_K = 5; // of a day about its winter's usual [M-med]
const KEPT = 0.8; // of a day's anomaly the next day [M-med]; 0.76 and 0.84 measured [C]
const WET_SHARE = 0.45; // of days with any precipitation [M-lo]; 0.4 and 0.65 measured [C]
const WETNESS_SPREAD = 0.4; // of the logarithm of a winter's precipitation [M-lo]

/** How one invented winter differs from the usual: degrees, and a standard normal for wetness. */
export interface WinterDraw {
	offset_K: number;
	wetness: number;
}

/** The usual temperature of a day: what invented winters depart from. */
export interface UsualDay {
	on: IsoDate;
	air_degC: number;
}

/** So many days of the usual climate from `from`. */
export function usualDays(lake: LakeFacts, from: IsoDate, count: number): UsualDay[] {
	const first = dayNumber(from);
	return Array.from({ length: count }, (_, index) => {
		const on = isoDate(first + index);
		return { on, air_degC: usualAir_degC(lake, on) };
	});
}

/**
 * An invented winter about the usual days of a latitude.
 *
 * Temperature is theirs, the draw's offset and a first-order autoregressive anomaly of 5 K that keeps
 * 0.8 a day. Precipitation is the usual amount in the mean, on 45 % of the days, with exponential
 * amounts. Common practice, no source; figures [M-lo].
 */
export function usualWinter(
	usual: readonly UsualDay[],
	latitude: number,
	draw: WinterDraw,
	random: () => number
): WeatherDay[] {
	const wetness = Math.exp(WETNESS_SPREAD * draw.wetness - WETNESS_SPREAD ** 2 / 2);
	const fresh_K = DAILY_SPREAD_K * Math.sqrt(1 - KEPT ** 2);
	let anomaly_K = DAILY_SPREAD_K * normalQuantile(random());
	return usual.map((day) => {
		const air_degC = day.air_degC + draw.offset_K + anomaly_K;
		anomaly_K = KEPT * anomaly_K + fresh_K * normalQuantile(random());
		const usual_kg_m2 = usualPrecipitation_kg_m2(latitude, air_degC) * wetness;
		return dayOf(day.on, air_degC, amount_kg_m2(usual_kg_m2, random));
	});
}

function amount_kg_m2(usual_kg_m2: number, random: () => number): number {
	const chance = random();
	return chance < WET_SHARE ? (-Math.log(random()) * usual_kg_m2) / WET_SHARE : 0;
}

function dayOf(on: IsoDate, air_degC: number, precipitation_kg_m2: number): WeatherDay {
	return {
		on,
		source: 'climate',
		air_degC,
		min_degC: null,
		max_degC: null,
		freezing_degCd: null,
		thawing_degCd: null,
		aboveFreezing_h: null,
		precipitation_kg_m2,
		snowfall_kg_m2: precipitation_kg_m2 * snowShare(air_degC),
		landSnow_m: null,
		wind_m_s: null
	};
}
