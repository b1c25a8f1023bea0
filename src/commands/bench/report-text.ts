import type { CComparison } from './c-comparison.ts';
import type { SizeTime } from './ensemble-report.ts';
import type { BenchReport } from './report.ts';

/** The report as lines of text. */
export function asText({ node, season, ensemble, warnings }: BenchReport): string {
	return [
		`node ${node}, medians`,
		`a winter of ${season.days} days through the model: ${season.median_ms.toFixed(3)} ms`,
		...besideC(season.c, 3),
		`an ensemble of ${sizeText(ensemble)}, the quantiles of each day included: ${ensemble.median_ms.toFixed(1)} ms, fastest ${ensemble.fastest_ms.toFixed(1)}`,
		...besideC(ensemble.c, 1),
		`  compared: ${ensemble.compared}`,
		'ensembles of other sizes, and the time for each member and day:',
		...ensemble.sizes.map(
			(size) =>
				`  ${sizeText(size)}: ${size.median_ms.toFixed(1)} ms, ${size.each_us.toFixed(2)} µs each`
		),
		...warnings.map((warning) => `WARNING: ${warning}`)
	].join('\n');
}

function besideC({ median_ms, ratio, largestDifference_m }: CComparison, digits: number): string[] {
	if (median_ms === null || ratio === null) return [];
	const apart = largestDifference_m?.toExponential(0) ?? '';
	return [
		`  the same in C (cc -O3): ${median_ms.toFixed(digits)} ms, ratio ${ratio.toFixed(2)}; results differ by ${apart} m at most`
	];
}

function sizeText({ members, days, readings }: SizeTime): string {
	return `${members} members × ${days} days, ${readings} readings`;
}
