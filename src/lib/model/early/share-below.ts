import type { Quantiles } from '../forecast.ts';

/**
 * Roughly what share of holes would show less than a limit: between the five quantiles on straight
 * lines, and no nearer to 0 and 1 than the outer ones say. `null` where they are not estimated.
 */
export function shareBelow(quantiles: Quantiles, limit_m: number): number | null {
	const { p05, p10, p50, p90, p95 } = quantiles;
	if (p05 === null || p10 === null || p50 === null || p90 === null || p95 === null) return null;
	const points: readonly [share: number, at_m: number][] = [
		[0.05, p05],
		[0.1, p10],
		[0.5, p50],
		[0.9, p90],
		[0.95, p95]
	];
	if (limit_m <= p05) return 0.05;
	if (limit_m > p95) return 0.95;
	const upper = points.findIndex(([, at_m]) => at_m >= limit_m);
	const [shareTo, to_m] = points[upper] ?? [0.95, p95];
	const [shareFrom, from_m] = points[upper - 1] ?? [0.05, p05];
	return shareFrom + ((limit_m - from_m) / (to_m - from_m)) * (shareTo - shareFrom);
}
