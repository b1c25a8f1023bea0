import type { IsoDate } from './calendar.ts';
import type { Quantiles } from './forecast.ts';

/** A reading beside what had been predicted for its day before it was taken. */
export interface PredictedReading {
	readingId: string;
	on: IsoDate;
	/** Of the whole thickness. */
	predicted: Quantiles;
	/** Mean of its holes. */
	measured_m: number;
	/** Since the reading before it in the same winter; `null` for the first. */
	daysSince: number | null;
}

/** How far off the predictions were, over some readings. */
export interface Hindsight {
	count: number;
	/** Two readings in three were this near or nearer. */
	usual_m: number;
	/** Mean of predicted less measured: above zero is too thick. */
	bias_m: number;
	/** Readings that had a band from 5 to 95 %, and how many of them lay inside it. */
	banded: number;
	inside: number;
}

const USUAL_FRACTION = 2 / 3;

/**
 * How far off predictions were; `null` when nothing was predicted.
 *
 *   error = median predicted - mean measured;  bias = mean error;  usual = the error at rank 2n/3
 *
 * Readings without a prediction are left out. A rank, not a deviation, so that one slip of the pen
 * does not decide what is usual.
 */
export function hindsight(readings: readonly PredictedReading[]): Hindsight | null {
	const errors = readings.map(error_m).filter((error) => error !== null);
	if (errors.length === 0) return null;
	const sizes = errors.map(Math.abs).toSorted((a, b) => a - b);
	const places = readings.map(bandPlace).filter((place) => place !== null);
	return {
		count: errors.length,
		usual_m: sizes[Math.ceil(USUAL_FRACTION * sizes.length) - 1] ?? 0,
		bias_m: errors.reduce((sum, error) => sum + error, 0) / errors.length,
		banded: places.length,
		inside: places.filter((place) => place === 'inside').length
	};
}

/** Predicted less measured; `null` when nothing was predicted. */
export function error_m({ predicted, measured_m }: PredictedReading): number | null {
	return predicted.p50 === null ? null : predicted.p50 - measured_m;
}

/** Where the reading lay in its band from 5 to 95 %; `null` when it had none. */
export function bandPlace(reading: PredictedReading): 'thinner' | 'inside' | 'thicker' | null {
	const { predicted, measured_m } = reading;
	if (predicted.p05 === null || predicted.p95 === null) return null;
	if (measured_m < predicted.p05) return 'thinner';
	return measured_m > predicted.p95 ? 'thicker' : 'inside';
}
