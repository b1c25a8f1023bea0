import type { Findings, Mode } from '../findings.ts';
import type { Phase } from '../lake-winter.ts';
import { MODES, PHASES } from './words.ts';

/** Where readings of a mode and phase lay in what had been foretold of them, each from 0 to 1. */
export interface Ranks {
	mode: Mode;
	phase: Phase;
	title: string;
	ranks: number[];
}

/** Those of growth first, so that modes stand beside each other. */
export function panelsOf(findings: Findings): Ranks[] {
	return PHASES.flatMap((phase) =>
		MODES.map((mode) => ({
			mode,
			phase,
			title: `${mode}, ${phase}`,
			ranks: findings[mode].predictions.flatMap(({ of, rank }) =>
				of.reading.phase === phase && rank !== null ? [rank] : []
			)
		}))
	);
}
