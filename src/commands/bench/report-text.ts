import type { CComparison } from './c-comparison.ts';
import type { EnsembleReport, SizeTime } from './ensemble-report.ts';
import type { PageTimes } from './keeping-up/page-times.ts';
import type { KeepingUpReport } from './keeping-up/report.ts';
import type { StoringReport } from './keeping-up/storing.ts';
import { lakeCostText } from './lake-cost/text.ts';
import { loadText } from './load/text.ts';
import { phoneText } from './phone/text.ts';
import type { BenchReport } from './report.ts';
import type { SeasonReport } from './season-report.ts';
import type { ServingReport } from './serving/report.ts';
import type { RequestRate } from './serving/request-rate.ts';

/** The report as lines of text. */
export function asText(report: BenchReport): string {
	return [
		`node ${report.node}, medians`,
		...linesOf(report.season, ofSeason),
		...linesOf(report.ensemble, ofEnsemble),
		...linesOf(report.storing, ofStoring),
		...linesOf(report.keepingUp, ofSources),
		...linesOf(report.serving, ofPages),
		...linesOf(report.phone, phoneText),
		...linesOf(report.lakeCost, lakeCostText),
		...linesOf(report.load, loadText),
		...report.warnings.map((warning) => `WARNING: ${warning}`)
	].join('\n');
}

function linesOf<Part>(part: Part | null, lines: (part: Part) => string[]): string[] {
	return part === null ? [] : lines(part);
}

function ofSeason(season: SeasonReport): string[] {
	return [
		`a winter of ${season.days} days through the model: ${season.median_ms.toFixed(3)} ms`,
		...besideC(season.c, 3)
	];
}

function ofEnsemble(ensemble: EnsembleReport): string[] {
	return [
		`an ensemble of ${sizeText(ensemble)}, the quantiles of each day included: ${ensemble.median_ms.toFixed(1)} ms, fastest ${ensemble.fastest_ms.toFixed(1)}`,
		...besideC(ensemble.c, 1),
		`  compared: ${ensemble.compared}`,
		'ensembles of other sizes, and the time for each member and day:',
		...ensemble.sizes.map(
			(size) =>
				`  ${sizeText(size)}: ${size.median_ms.toFixed(1)} ms, ${size.each_us.toFixed(2)} µs each`
		)
	];
}

function ofStoring({ rows, rows_per_s, fastest_rows_per_s }: StoringReport): string[] {
	return [
		`a winter's ${rows} hours into the file: ${Math.round(rows_per_s)} rows a second, fastest ${Math.round(fastest_rows_per_s)}`
	];
}

function ofSources(keepingUp: KeepingUpReport): string[] {
	const { lakes, limits, calls, mostCallsInAMinute, duration_s, idle, meanwhile } = keepingUp;
	const times = meanwhile.p95_ms / idle.p95_ms;
	return [
		`${lakes} lakes on one source, ${limits.perDay} calls a day and ${limits.perMinute} a minute allowed: ${calls} calls in ${duration_s.toFixed(1)} s, at most ${mostCallsInAMinute} in a minute`,
		`  pages before: ${pagesText(idle)}`,
		`  pages meanwhile: ${pagesText(meanwhile)}; 95 % are ${times.toFixed(2)} times those before`
	];
}

function ofPages({ lakes, trivial, lake, lakeAnew, ratio, home }: ServingReport): string[] {
	const rate = ({ perSecond }: RequestRate) => `${perSecond.toFixed(0)} a second`;
	return [
		`pages with ${lakes} lakes stored, on 4 connections: a form ${rate(trivial)}, the lakes' pages ${rate(lake)} (${ratio.toFixed(2)} of the form's), all rendered anew ${rate(lakeAnew)}`,
		`  home after a start: ${home.first_ms.toFixed(0)} ms, every lake told within ${(home.allTold_ms / 1000).toFixed(1)} s, a form meanwhile 95 % within ${home.otherMeanwhile_p95_ms.toFixed(0)} ms; home again: ${home.again_ms.toFixed(0)} ms`
	];
}

function pagesText({ requests, median_ms, p95_ms, slowest_ms }: PageTimes): string {
	return `${requests}, median ${median_ms.toFixed(0)} ms, 95 % within ${p95_ms.toFixed(0)} ms, slowest ${slowest_ms.toFixed(0)} ms`;
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
