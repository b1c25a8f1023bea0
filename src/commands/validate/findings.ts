import type { IceOutForecast } from './ice-out.ts';
import { iceOutForecasts } from './ice-out.ts';
import type { LakeWinter } from './lake-winter.ts';
import { taughtByOtherWinters } from './memories.ts';
import type { EnsemblePrediction, Knowledge, ParametersOf } from './modes.ts';
import { predictions, priorKnowledge } from './modes.ts';

export type Mode = 'prior' | 'learned' | 'recalibrated';

/** All that a mode said of readings and ice-outs, one by one. */
export interface ModeFindings {
	predictions: EnsemblePrediction[];
	iceOut: IceOutForecast[];
}

export type Findings = Record<Mode, ModeFindings>;

/** Runs every mode over the winters; scores and pictures are made of the same findings. */
export function findingsOf(winters: readonly LakeWinter[], parametersOf: ParametersOf): Findings {
	const prior = priorKnowledge(parametersOf);
	const learned = { ...prior, memoryOf: taughtByOtherWinters(winters, parametersOf) };
	const recalibrated = { ...learned, usesReadings: true };
	const of = (knowledge: Knowledge): ModeFindings => ({
		predictions: predictions(winters, knowledge),
		iceOut: iceOutForecasts(winters, knowledge)
	});
	return { prior: of(prior), learned: of(learned), recalibrated: of(recalibrated) };
}
