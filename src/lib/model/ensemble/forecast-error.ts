import { normalDraws } from './random.ts';

/** The last day that a forecast is listened to. Past it climate says as much [M-med]. */
export const LONGEST_LEAD_d = 10;

/** What a day's error or anomaly keeps until the next day. Derived [M-med]. */
export const KEPT_OVERNIGHT = 0.7;

const FIRST_DAY_K = 1.5; // mean absolute error of the daily mean on the first day [M-med]
const GROWTH_K = 0.35; // what each further day adds [M-med]
const SPREAD_OF_ERROR = 1.25; // σ of a normal error over its mean absolute value [C]
const LARGEST_K = 6; // σ that climate itself has [M-med]

/**
 * Standard deviation of a forecast's daily temperature so many days ahead, 1 for the first.
 *
 *   σ(L) = min(6, 1.25 (1.5 + 0.35 (L - 1))) K
 *
 * Weather services publish that it grows and levels off at climate's own [R]; the line is derived.
 */
export function errorSpread_K(lead_d: number): number {
	return Math.min(LARGEST_K, SPREAD_OF_ERROR * (FIRST_DAY_K + GROWTH_K * (lead_d - 1)));
}

const FIRST_FALL_SPREAD = 0.5; // of the logarithm of a day's amount; common practice, no source
const FALL_GROWTH = 0.05; // common practice, no source

/** Errors of so many forecasts: an array over them for each day of lead, the first day at index 0. */
export interface ForecastErrors {
	/** Added to the day's mean, minimum and maximum. */
	air_K: Float64Array[];
	/** The day's precipitation is multiplied by it; 1 in the mean. */
	fallFactor: Float64Array[];
}

/**
 * Draws forecast errors that last: each day keeps 0.7 of the deviate of the day before.
 *
 * Amounts err by a factor, which cannot bring rain or snow to a day that was forecast dry.
 */
export function drawForecastErrors(count: number, random: () => number): ForecastErrors {
	const air = lastingDeviates(count, random);
	const fall = lastingDeviates(count, random);
	return {
		air_K: air.map((deviates, index) => deviates.map((z) => errorSpread_K(index + 1) * z)),
		fallFactor: fall.map((deviates, index) => {
			const spread = FIRST_FALL_SPREAD + FALL_GROWTH * index;
			return deviates.map((z) => Math.exp(spread * z - spread ** 2 / 2));
		})
	};
}

/** First-order autoregressive deviates of unit variance, one array a day. */
function lastingDeviates(count: number, random: () => number): Float64Array[] {
	const fresh = Math.sqrt(1 - KEPT_OVERNIGHT ** 2);
	const days: Float64Array[] = [];
	let last = normalDraws(count, random);
	for (let lead_d = 1; lead_d <= LONGEST_LEAD_d; lead_d++) {
		days.push(last);
		const news = normalDraws(count, random);
		last = last.map((z, i) => KEPT_OVERNIGHT * z + fresh * (news[i] ?? 0));
	}
	return days;
}
