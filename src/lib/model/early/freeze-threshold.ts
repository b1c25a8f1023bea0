import { addDays, daysBetween, winterOf, type IsoDate, type WinterId } from '../calendar.ts';
import { meanAir_degC } from '../degree-days.ts';
import type { LakeFacts } from '../lake.ts';
import { freezeUpSpan } from '../freeze-up.ts';
import type { SiteWinter } from '../site-winter.ts';
import type { WeatherDay } from '../weather.ts';
import { smoothedAir } from './smoothed-air.ts';

/** Mean over five measured lakes of the smoothed air on the day before 106 freeze-ups [C]. */
const USUAL_degC = 0;
/** How far a lake lies off that: springs, shelter, a depth that is not the mean one [C]. */
const LAKES_K = 1.6;
/** How far a lake's winters lie apart: wind, sun, snow on open water [C]. */
const WINTERS_K = 1.2;
/** A freeze-up known only to so many days teaches nothing of the threshold. Our choice. */
const SURE_d = 6;
/** Days with a temperature before a freeze-up that it takes to follow the air. Our choice. */
const LEAST_d = 30;

/** Smoothed air on the day before a lake froze over. */
export interface EarlierFreezeUp {
	winter: WinterId;
	freezeUpOn: IsoDate;
	smoothed_degC: number;
}

/** Smoothed air at which a lake freezes over: a normal quantity. */
export interface FreezeThreshold {
	mean_degC: number;
	sd_K: number;
}

/** What a site's earlier winters show of its threshold; the weather is sorted. */
export function earlierFreezeUps(
	records: readonly SiteWinter[],
	weather: readonly WeatherDay[],
	lake: LakeFacts
): EarlierFreezeUp[] {
	return records.flatMap((record) => {
		const span = freezeUpSpan(record);
		if (span === null || daysBetween(span.first, span.last) > SURE_d) return [];
		const before = addDays(span.middle, -1);
		const days = weather.filter(({ on }) => on <= before && winterOf(on) === record.winter);
		const known = days.filter((day) => meanAir_degC(day) !== null);
		if (known.length < LEAST_d || known.at(-1)?.on !== before) return [];
		const smoothed_degC = smoothedAir(days, lake).at(-1)?.smoothed_degC ?? 0;
		return [{ winter: record.winter, freezeUpOn: span.middle, smoothed_degC }];
	});
}

/**
 * The threshold of a lake, and how far this winter's may lie off it.
 *
 *   w = σl² / (σl² + σw²/n),  mean = (1 - w) 0 °C + w mean of n,  σ² = σl² (1 - w) + σw²
 *
 * The customary combination of what all lakes show with what this one did. σl = 1.6 K between lakes
 * and σw = 1.2 K between winters of one are of 106 freeze-ups of five lakes in northern Wisconsin and
 * eastern Finland [C]: rough for a lake unlike them.
 */
export function freezeThreshold(earlier: readonly EarlierFreezeUp[]): FreezeThreshold {
	const n = earlier.length;
	if (n === 0) return { mean_degC: USUAL_degC, sd_K: Math.hypot(LAKES_K, WINTERS_K) };
	const own_degC = earlier.reduce((sum, { smoothed_degC }) => sum + smoothed_degC, 0) / n;
	const weight = LAKES_K ** 2 / (LAKES_K ** 2 + WINTERS_K ** 2 / n);
	return {
		mean_degC: USUAL_degC + weight * (own_degC - USUAL_degC),
		sd_K: Math.sqrt(LAKES_K ** 2 * (1 - weight) + WINTERS_K ** 2)
	};
}
