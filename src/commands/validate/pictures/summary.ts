import { quantileOf } from '../distribution.ts';
import { mean, rootMeanSquare } from '../scores.ts';

/** Errors of a group in short. */
export interface Summary {
	n: number;
	bias: number;
	rmse: number;
	/** Four in five errors lie between these. */
	low: number;
	high: number;
}

/** `null` of no errors at all. */
export function summarize(errors: readonly number[]): Summary | null {
	const [bias, rmse] = [mean(errors), rootMeanSquare(errors)];
	if (bias === null || rmse === null) return null;
	const sorted = errors.toSorted((a, b) => a - b);
	return {
		n: errors.length,
		bias,
		rmse,
		low: quantileOf(sorted, 0.1),
		high: quantileOf(sorted, 0.9)
	};
}
