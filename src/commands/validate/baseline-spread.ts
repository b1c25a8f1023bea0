import type { Baseline } from './baselines.ts';
import { gaussianCrps, Z90, Z95 } from './gaussian.ts';
import type { Case, LakeWinter } from './lake-winter.ts';
import { casesOf } from './lake-winter.ts';
import type { Prediction } from './scores.ts';
import { rootMeanSquare } from './scores.ts';

/** Fewer left-out residuals than this say nothing about a spread. */
const LEAST_RESIDUALS = 3;

interface Residual {
	of: Case;
	estimate_m: number;
	error_m: number;
}

/**
 * What a baseline says of each reading that it can speak of: its law as the mean, and as sigma the
 * root mean square of its errors in the same phase on the readings it has not been told of (other
 * lakes; for a law with the lake's own α, the lake's other winters).
 */
export function baselinePredictions(
	baseline: Baseline,
	winters: readonly LakeWinter[]
): Prediction[] {
	const residuals = casesOf(winters).flatMap((of): Residual[] => {
		const estimate_m = baseline.predict(of);
		return estimate_m === null
			? []
			: [{ of, estimate_m, error_m: estimate_m - of.reading.total_m }];
	});
	return residuals.map(({ of, estimate_m }) =>
		gaussianPrediction(of, estimate_m, leftOutSpread_m(baseline, residuals, of))
	);
}

/** Where a folder has one lake only, its other winters stand in for other lakes. */
function leftOutSpread_m(
	baseline: Baseline,
	residuals: readonly Residual[],
	{ winter, reading }: Case
): number | null {
	const samePhase = residuals.filter(({ of }) => of.reading.phase === reading.phase);
	const otherLakes = samePhase.filter(({ of }) => of.winter.lakeKey !== winter.lakeKey);
	const otherWinters = samePhase.filter(
		({ of }) => of.winter.lakeKey === winter.lakeKey && of.winter.winter !== winter.winter
	);
	const order =
		baseline.leftOut === 'lake' ? [otherLakes, otherWinters] : [otherWinters, otherLakes];
	const used = order.find((candidates) => candidates.length >= LEAST_RESIDUALS) ?? [];
	return rootMeanSquare(used.map((residual) => residual.error_m));
}

function gaussianPrediction(of: Case, total_m: number, sigma_m: number | null): Prediction {
	const quantile_m = (z: number) => (sigma_m === null ? null : total_m + z * sigma_m);
	return {
		of,
		total_m,
		white_m: null,
		snow_m: null,
		p05_m: quantile_m(-Z95),
		p10_m: quantile_m(-Z90),
		p95_m: quantile_m(Z95),
		crps_m: sigma_m === null ? null : gaussianCrps(total_m, sigma_m, of.reading.total_m)
	};
}
