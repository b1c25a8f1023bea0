import type { Findings, Mode } from '../findings.ts';
import type { Case, Phase } from '../lake-winter.ts';

/** How far an estimate was off. */
export interface Miss {
	of: Case;
	phase: Phase;
	estimate_cm: number;
	measured_cm: number;
	/** Estimate minus measured. */
	error_cm: number;
}

/** The readings that a mode gave an estimate for. */
export function missesOf(findings: Findings, mode: Mode): Miss[] {
	return findings[mode].predictions.flatMap(({ of, total_m }) => {
		if (total_m === null) return [];
		const [estimate_cm, measured_cm] = [total_m * 100, of.reading.total_m * 100];
		const error_cm = estimate_cm - measured_cm;
		return [{ of, phase: of.reading.phase, estimate_cm, measured_cm, error_cm }];
	});
}

export function ofPhase(misses: readonly Miss[], phase: Phase): Miss[] {
	return misses.filter((miss) => miss.phase === phase);
}

export function errorsOf(misses: readonly Miss[]): number[] {
	return misses.map(({ error_cm }) => error_cm);
}
