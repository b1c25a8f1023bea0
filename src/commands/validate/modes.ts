import type { EnsembleDay } from '#lib/model/ensemble/run.ts';
import type { Holes } from '#lib/model/ensemble/spots.ts';
import type { Parameters } from '#lib/model/parameters.ts';
import { ensembleCrps, quantileOf, rankOf } from './distribution.ts';
import { followWinter } from './ensemble-winter.ts';
import type { Case, LakeWinter } from './lake-winter.ts';
import { casesOf } from './lake-winter.ts';
import type { MemoryOf } from './memories.ts';
import { untaught } from './memories.ts';
import type { Prediction } from './scores.ts';

/** Parameters to score a lake with; `undefined` means as shipped. */
export type ParametersOf = (winter: LakeWinter) => Parameters | undefined;

export const asShipped: ParametersOf = () => undefined;

/** What the ensembles of a mode may know. */
export interface Knowledge {
	parametersOf: ParametersOf;
	memoryOf: MemoryOf;
	/** Whether a winter's own readings are taken in, each on its day. */
	usesReadings: boolean;
}

/** What an ensemble said of a reading. */
export interface EnsemblePrediction extends Prediction {
	/** The share of the forecast whose quantile was measured, 0 to 1. */
	rank: number | null;
}

/** Weather, freeze-up and the lake's facts; no reading of any kind. */
export function priorKnowledge(parametersOf: ParametersOf): Knowledge {
	return { parametersOf, memoryOf: untaught, usesReadings: false };
}

/**
 * What is said of every reading before it is taken in. Where readings are used a winter's first ones
 * are not predicted.
 */
export function predictions(
	winters: readonly LakeWinter[],
	knowledge: Knowledge
): EnsemblePrediction[] {
	return winters.flatMap((winter) => ofWinter(winter, knowledge));
}

function ofWinter(winter: LakeWinter, knowledge: Knowledge): EnsemblePrediction[] {
	const { parametersOf, memoryOf, usesReadings } = knowledge;
	const asked = casesOf([winter]).filter(({ previous }) => !usesReadings || previous !== null);
	const last = asked.at(-1);
	if (!last) return [];
	const said = new Map<Case, EnsemblePrediction>();
	const known = {
		readings: usesReadings ? winter.readings : [],
		memory: memoryOf(winter),
		parameters: parametersOf(winter)
	};
	followWinter(winter, known, last.reading.on, (day) => {
		for (const of of asked)
			if (of.reading.on === day.on) said.set(of, ofHoles(of, notYetTaken(day)));
	});
	return asked.map((of) => said.get(of) ?? unanswered(of));
}

/** What was said of a day's readings before any of them was known. */
function notYetTaken({ before, holes }: EnsembleDay): Holes {
	return before ?? holes;
}

/** What a hole at a random spot would show, and how far that is from what one did show. */
function ofHoles(of: Case, { total_m, white_m, snow_m }: Holes): EnsemblePrediction {
	const sorted_m = total_m.toSorted();
	return {
		of,
		total_m: quantileOf(sorted_m, 0.5),
		white_m: quantileOf(white_m.toSorted(), 0.5),
		snow_m: quantileOf(snow_m.toSorted(), 0.5),
		p05_m: quantileOf(sorted_m, 0.05),
		p10_m: quantileOf(sorted_m, 0.1),
		p95_m: quantileOf(sorted_m, 0.95),
		crps_m: ensembleCrps(sorted_m, of.reading.total_m),
		rank: rankOf(sorted_m, of.reading.total_m)
	};
}

function unanswered(of: Case): EnsemblePrediction {
	return {
		of,
		total_m: null,
		white_m: null,
		snow_m: null,
		p05_m: null,
		p10_m: null,
		p95_m: null,
		crps_m: null,
		rank: null
	};
}
