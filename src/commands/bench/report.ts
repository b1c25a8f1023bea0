import { ensembleReport, type EnsembleBench, type EnsembleReport } from './ensemble-report.ts';
import { seasonReport, type SeasonReport } from './season-report.ts';

export interface BenchReport {
	node: string;
	season: SeasonReport;
	ensemble: EnsembleReport;
	/** What a reader must know before trusting the figures. */
	warnings: string[];
}

/** Times the model: one winter, and an ensemble of winters. */
export function benchReport(bench: EnsembleBench): BenchReport {
	const { season, warnings } = seasonReport();
	const { ensemble, warnings: more } = ensembleReport(bench);
	return { node: process.version, season, ensemble, warnings: [...warnings, ...more] };
}
