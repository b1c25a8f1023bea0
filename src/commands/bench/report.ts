import { ensembleReport, type EnsembleBench, type EnsembleReport } from './ensemble-report.ts';
import { keepingUpReport, type KeepingUpReport } from './keeping-up/report.ts';
import { storingReport, type StoringReport } from './keeping-up/storing.ts';
import { seasonReport, type SeasonReport } from './season-report.ts';

export interface BenchReport {
	node: string;
	season: SeasonReport;
	ensemble: EnsembleReport;
	/** Weather from sources: a winter's hours into the file, and pages while many lakes are refreshed. */
	storing: StoringReport;
	keepingUp: KeepingUpReport;
	/** What a reader must know before trusting the figures. */
	warnings: string[];
}

export interface Bench {
	ensemble: EnsembleBench;
	/** Lakes that are refreshed, and winters that are stored. */
	lakes: number;
	winters: number;
}

/** Times the model: one winter, and an ensemble of winters; then how its weather is kept up. */
export async function benchReport(bench: Bench): Promise<BenchReport> {
	const { season, warnings } = seasonReport();
	const { ensemble, warnings: more } = ensembleReport(bench.ensemble);
	return {
		node: process.version,
		season,
		ensemble,
		storing: await storingReport(bench.winters),
		keepingUp: await keepingUpReport(bench.lakes),
		warnings: [...warnings, ...more]
	};
}
