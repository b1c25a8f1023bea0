import { dayDegrees, splitBySine, type DayDegrees } from './degree-days.ts';
import { usualRange_K } from './air-range.ts';
import { usualPrecipitation_kg_m2 } from './snow-prior.ts';
import { freshSnow_kg_m3, snowShare } from './snow.ts';
import type { SeasonWeatherDay } from './season-weather.ts';
import type { WeatherDay } from './weather.ts';

const NO_DEGREES: DayDegrees = { freezing_degCd: 0, thawing_degCd: 0, aboveFreezing_h: 0 };

/** What the weather does to a site over a time: sums, not rates. */
export interface Forcing {
	duration_d: number;
	freezing_degCd: number;
	thawing_degCd: number;
	/** Mean of the day; a gap's as its neighbours suggest. */
	air_degC: number;
	/** Share of the time above freezing. */
	warmFraction: number;
	/** As water; before wind takes its part. */
	snowfall_kg_m2: number;
	freshSnow_kg_m3: number;
	rain_kg_m2: number;
	/** Clear-sky mean. */
	sun_W_m2: number;
}

/** A part of a time whose weather was even. */
export function shareOf(forcing: Forcing, share: number): Forcing {
	return share === 1 ? forcing : scaled(forcing, share);
}

/** A copy to be changed in place. */
export function copyForcing(forcing: Forcing): Forcing {
	return scaled(forcing, 1);
}

function scaled(forcing: Forcing, share: number): Forcing {
	return {
		duration_d: forcing.duration_d * share,
		freezing_degCd: forcing.freezing_degCd * share,
		thawing_degCd: forcing.thawing_degCd * share,
		air_degC: forcing.air_degC,
		warmFraction: forcing.warmFraction,
		snowfall_kg_m2: forcing.snowfall_kg_m2 * share,
		freshSnow_kg_m3: forcing.freshSnow_kg_m3,
		rain_kg_m2: forcing.rain_kg_m2 * share,
		sun_W_m2: forcing.sun_W_m2
	};
}

/** What one day's weather does, with what stands in for what nobody reported. */
export interface DayForcing extends Forcing {
	/** `null` where none of the day's own is known; of a day without a temperature, at least so many. */
	aboveFreezing_h: number | null;
	hasAir: boolean;
	/** Precipitation or snowfall was reported. */
	hasSnow: boolean;
}

/**
 * A day's frost, thaw, snow, rain and sun.
 *
 * Without a temperature there is no frost, and the thaw that the neighbours suggest. Without
 * precipitation the change of the snow on land stands in, and without that the usual amount.
 */
export function dayForcing(
	day: SeasonWeatherDay,
	previous: WeatherDay | null,
	latitude: number,
	sun_W_m2: number
): DayForcing {
	const own = day.reported === null ? null : dayDegrees(day.reported, latitude);
	const degrees = own ?? suggestedThaw(day, latitude);
	const air_degC = day.likelyAir_degC ?? 0;
	const fall = precipitation(day.reported, previous, latitude, air_degC);
	return {
		duration_d: 1,
		freezing_degCd: degrees.freezing_degCd,
		thawing_degCd: degrees.thawing_degCd,
		air_degC,
		warmFraction: degrees.aboveFreezing_h / 24,
		snowfall_kg_m2: fall.snow_kg_m2,
		rain_kg_m2: fall.rain_kg_m2,
		freshSnow_kg_m3: freshSnow_kg_m3(air_degC),
		sun_W_m2,
		aboveFreezing_h: (own ?? day.reported)?.aboveFreezing_h ?? null,
		hasAir: own !== null,
		hasSnow: fall.isReported
	};
}

function suggestedThaw(day: SeasonWeatherDay, latitude: number): DayDegrees {
	if (day.likelyAir_degC === null) return NO_DEGREES;
	const range_K = usualRange_K(latitude, Number(day.on.slice(5, 7)));
	return { ...splitBySine(day.likelyAir_degC, range_K), freezing_degCd: 0 };
}

interface Fall {
	snow_kg_m2: number;
	rain_kg_m2: number;
	isReported: boolean;
}

function precipitation(
	day: WeatherDay | null,
	previous: WeatherDay | null,
	latitude: number,
	air_degC: number
): Fall {
	const total = day?.precipitation_kg_m2 ?? null;
	const snow = day?.snowfall_kg_m2 ?? null;
	if (snow !== null)
		return { snow_kg_m2: snow, rain_kg_m2: Math.max(0, (total ?? snow) - snow), isReported: true };
	if (total !== null) return { ...byTemperature(total, air_degC), isReported: true };
	const usual = byTemperature(usualPrecipitation_kg_m2(latitude, air_degC), air_degC);
	const onLand = landSnowfall_kg_m2(day, previous, air_degC);
	if (onLand === null) return { ...usual, isReported: false };
	return { snow_kg_m2: onLand, rain_kg_m2: usual.rain_kg_m2, isReported: false };
}

function byTemperature(
	total_kg_m2: number,
	air_degC: number
): { snow_kg_m2: number; rain_kg_m2: number } {
	const snow_kg_m2 = total_kg_m2 * snowShare(air_degC);
	return { snow_kg_m2, rain_kg_m2: total_kg_m2 - snow_kg_m2 };
}

/** Fresh snow by the rise of the depth on land since the day before; settling hides a part. */
function landSnowfall_kg_m2(
	day: WeatherDay | null,
	previous: WeatherDay | null,
	air_degC: number
): number | null {
	if (day === null || day.landSnow_m === null) return null;
	if (previous === null || previous.landSnow_m === null) return null;
	return Math.max(0, day.landSnow_m - previous.landSnow_m) * freshSnow_kg_m3(air_degC);
}
