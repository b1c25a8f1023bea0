import { usualRange_K } from './air-range.ts';
import type { WeatherDay } from './weather.ts';

/** One day's frost and thaw, base 0 °C, gross: warm hours do not cancel cold ones. */
export interface DayDegrees {
	freezing_degCd: number;
	thawing_degCd: number;
	aboveFreezing_h: number;
}

/**
 * Frost, thaw and hours above freezing of a day, `null` when it has no temperature.
 *
 * Days built from hours keep their sums. Others are split by {@link splitBySine} with the day's own
 * range, or where minimum and maximum are missing with {@link usualRange_K}: so that a coefficient
 * fitted to daily means holds for hourly records.
 */
export function dayDegrees(day: WeatherDay, latitude: number): DayDegrees | null {
	const mean_degC = meanAir_degC(day);
	if (day.freezing_degCd !== null && day.thawing_degCd !== null) {
		const mean = mean_degC ?? day.thawing_degCd - day.freezing_degCd;
		const hours = day.aboveFreezing_h ?? splitBySine(mean, range_K(day, latitude)).aboveFreezing_h;
		return {
			freezing_degCd: day.freezing_degCd,
			thawing_degCd: day.thawing_degCd,
			aboveFreezing_h: hours
		};
	}
	if (mean_degC === null) return null;
	const split = splitBySine(mean_degC, range_K(day, latitude));
	return { ...split, aboveFreezing_h: day.aboveFreezing_h ?? split.aboveFreezing_h };
}

/** Mean of the day; the middle of its range where only that is reported. */
export function meanAir_degC(
	day: Pick<WeatherDay, 'air_degC' | 'min_degC' | 'max_degC'>
): number | null {
	if (day.air_degC !== null) return day.air_degC;
	if (day.min_degC !== null && day.max_degC !== null) return (day.min_degC + day.max_degC) / 2;
	return null;
}

/**
 * The freezing and thawing part of a day whose temperature follows a sine about its mean.
 *
 *   T(t) = m + A cos t,  A = range/2,  θ = acos(-m/A)
 *   thaw = (A sin θ + m θ)/π,  frost = thaw - m,  hours above = 24 θ/π
 *
 * A day wholly on one side of freezing keeps its mean. Single-sine method [Baskerville1969] [M-hi].
 */
export function splitBySine(mean_degC: number, range_K: number): DayDegrees {
	const amplitude_K = Math.max(0, range_K) / 2;
	if (mean_degC >= amplitude_K)
		return { freezing_degCd: 0, thawing_degCd: mean_degC, aboveFreezing_h: mean_degC > 0 ? 24 : 0 };
	if (mean_degC <= -amplitude_K)
		return { freezing_degCd: -mean_degC, thawing_degCd: 0, aboveFreezing_h: 0 };
	const theta = Math.acos(-mean_degC / amplitude_K);
	const thawing_degCd = (amplitude_K * Math.sin(theta) + mean_degC * theta) / Math.PI;
	return {
		freezing_degCd: thawing_degCd - mean_degC,
		thawing_degCd,
		aboveFreezing_h: (24 * theta) / Math.PI
	};
}

function range_K(day: WeatherDay, latitude: number): number {
	if (day.min_degC !== null && day.max_degC !== null)
		return Math.max(0, day.max_degC - day.min_degC);
	return usualRange_K(latitude, Number(day.on.slice(5, 7)));
}
