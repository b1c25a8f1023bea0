import { ensembleReport, type EnsembleReport } from './ensemble-report.ts';
import { keepingUpReport, type KeepingUpReport } from './keeping-up/report.ts';
import { lakeCostReport, type LakeCostReport } from './lake-cost/report.ts';
import { loadReport, type LoadReport } from './load/report.ts';
import { storingReport, type StoringReport } from './keeping-up/storing.ts';
import type { Bench, Part } from './parts.ts';
import { phoneReport, type PhoneReport } from './phone/report.ts';
import { seasonReport, type SeasonReport } from './season-report.ts';
import { servingReport, type ServingReport } from './serving/report.ts';

/** What was timed; a part that was not is `null`. */
export interface BenchReport {
	node: string;
	season: SeasonReport | null;
	ensemble: EnsembleReport | null;
	/** Weather from sources: a winter's hours into the file, and pages while many lakes are refreshed. */
	storing: StoringReport | null;
	keepingUp: KeepingUpReport | null;
	/** Pages of many stored lakes. */
	serving: ServingReport | null;
	/** The page of a lake as it comes to a phone; `null` without a browser too. */
	phone: PhoneReport | null;
	/** What one lake costs. */
	lakeCost: LakeCostReport | null;
	/** Phones, people who write, and one who imports, all at once. */
	load: LoadReport | null;
	/** What a reader must know before trusting the figures. */
	warnings: string[];
}

/** Times the model, then how weather is kept up, then pages. */
export async function benchReport(bench: Bench, parts: ReadonlySet<Part>): Promise<BenchReport> {
	const warnings: string[] = [];
	const heeded = <Told extends { warnings: string[] }>(told: Told): Told => {
		warnings.push(...told.warnings);
		return told;
	};
	const isModel = parts.has('model');
	return {
		node: process.version,
		season: isModel ? heeded(seasonReport()).season : null,
		ensemble: isModel ? heeded(ensembleReport(bench.ensemble)).ensemble : null,
		storing: parts.has('storing') ? await storingReport(bench.winters) : null,
		keepingUp: parts.has('keepingUp') ? await keepingUpReport(bench.lakes) : null,
		serving: parts.has('serving')
			? await servingReport(bench.served.lakes, bench.served.duration_ms)
			: null,
		phone: parts.has('phone') ? heeded(await phoneReport(bench.visits)).phone : null,
		lakeCost: parts.has('lakeCost') ? await lakeCostReport(bench.costed) : null,
		load: parts.has('load') ? await loadReport(durationOf(bench.load, parts)) : null,
		warnings
	};
}

function durationOf({ duration_ms, alone_ms }: Bench['load'], parts: ReadonlySet<Part>): number {
	return parts.size === 1 ? alone_ms : duration_ms;
}
