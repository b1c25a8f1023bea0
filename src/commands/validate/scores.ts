import type { Case } from './lake-winter.ts';

/** What was said of a reading before it was taken in. `null` is not said. */
export interface Prediction {
	of: Case;
	total_m: number | null;
	white_m: number | null;
	snow_m: number | null;
	p05_m: number | null;
	p10_m: number | null;
	p95_m: number | null;
	crps_m: number | null;
}

/** A whole score is `null` where nothing it needs was predicted or measured. */
export interface Score {
	n: number;
	/** Readings that no estimate could be given for: never dropped in silence. */
	unanswered: number;
	rmse_cm: number | null;
	bias_cm: number | null;
	crps_cm: number | null;
	coverage90: number | null;
	belowLower: number | null;
	white_n: number;
	white_rmse_cm: number | null;
	white_bias_cm: number | null;
	/** What the measured mean everywhere would score. */
	whiteSpread_cm: number | null;
	snow_n: number;
	snow_rmse_cm: number | null;
}

/** Scores of these predictions; errors are estimate minus measured. */
export function score(predictions: readonly Prediction[]): Score {
	const total = errors(predictions, 'total_m');
	const white = errors(predictions, 'white_m');
	const snow = errors(predictions, 'snow_m');
	const crps = predictions.map((prediction) => prediction.crps_m).filter((crps) => crps !== null);
	return {
		n: total.length,
		unanswered: predictions.length - total.length,
		rmse_cm: cm(rootMeanSquare(total)),
		bias_cm: cm(mean(total)),
		crps_cm: cm(mean(crps)),
		coverage90: mean(predictions.map(insideBand).filter((inside) => inside !== null)),
		belowLower: mean(predictions.map(isBelowLower).filter((below) => below !== null)),
		white_n: white.length,
		white_rmse_cm: cm(rootMeanSquare(white)),
		white_bias_cm: cm(mean(white)),
		whiteSpread_cm: cm(spread(predictions.map(({ of }) => of.reading.white_m))),
		snow_n: snow.length,
		snow_rmse_cm: cm(rootMeanSquare(snow))
	};
}

function errors(
	predictions: readonly Prediction[],
	layer: 'total_m' | 'white_m' | 'snow_m'
): number[] {
	return predictions.flatMap((prediction) => {
		const estimate = prediction[layer];
		const measured = prediction.of.reading[layer];
		return estimate === null || measured === null ? [] : [estimate - measured];
	});
}

function spread(measured: readonly (number | null)[]): number | null {
	const known = measured.filter((value) => value !== null);
	const middle = mean(known);
	return middle === null ? null : rootMeanSquare(known.map((value) => value - middle));
}

function insideBand({ of, p05_m, p95_m }: Prediction): number | null {
	if (p05_m === null || p95_m === null) return null;
	return of.reading.total_m >= p05_m && of.reading.total_m <= p95_m ? 1 : 0;
}

function isBelowLower({ of, p10_m }: Prediction): number | null {
	if (p10_m === null) return null;
	return of.reading.total_m < p10_m ? 1 : 0;
}

export function mean(values: readonly number[]): number | null {
	if (values.length === 0) return null;
	return values.reduce((sum, value) => sum + value, 0) / values.length;
}

export function rootMeanSquare(values: readonly number[]): number | null {
	const square = mean(values.map((value) => value * value));
	return square === null ? null : Math.sqrt(square);
}

function cm(value_m: number | null): number | null {
	return value_m === null ? null : value_m * 100;
}
