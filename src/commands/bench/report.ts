import { ensembleReport, type EnsembleBench, type EnsembleReport } from './ensemble-report.ts';
import { keepingUpReport, type KeepingUpReport } from './keeping-up/report.ts';
import { storingReport, type StoringReport } from './keeping-up/storing.ts';
import { servingReport, type ServingReport } from './serving/report.ts';
import { seasonReport, type SeasonReport } from './season-report.ts';

export interface BenchReport {
	node: string;
	season: SeasonReport;
	ensemble: EnsembleReport;
	/** Weather from sources: a winter's hours into the file, and pages while many lakes are refreshed. */
	storing: StoringReport;
	keepingUp: KeepingUpReport;
	/** Pages of many stored lakes. */
	serving: ServingReport;
	/** What a reader must know before trusting the figures. */
	warnings: string[];
}

export interface Bench {
	ensemble: EnsembleBench;
	/** Lakes that are refreshed, and winters that are stored. */
	lakes: number;
	winters: number;
	/** Lakes whose pages are asked for, and for how long. */
	served: { lakes: number; duration_ms: number };
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
		serving: await servingReport(bench.served.lakes, bench.served.duration_ms),
		warnings: [...warnings, ...more]
	};
}
