import { baselinePredictions } from './baseline-spread.ts';
import { baselinesFor } from './baselines.ts';
import type { PhaseScores } from './groups.ts';
import { groupScores } from './groups.ts';
import type { IceOutForecast, IceOutScores } from './ice-out.ts';
import { iceOutForecasts, iceOutScores } from './ice-out.ts';
import type { LakeWinter } from './lake-winter.ts';
import type { ParametersOf } from './modes.ts';
import { priorPredictions, recalibratedPredictions } from './modes.ts';
import { REFITTED } from './refit.ts';
import type { Prediction } from './scores.ts';
import type { Selection } from './selection.ts';

export type Mode = 'prior' | 'learned' | 'recalibrated';

export type ModeScores = PhaseScores & { iceOut: IceOutScores };

/** What `validate --json` prints. Groups are `all` and each dataset by name. */
export interface Report {
	/** `refitted`: for each lake anew on the other lakes; `shipped`: as the product uses them. */
	parameters: 'shipped' | 'refitted';
	notes: string[];
	winters: number;
	leftOut: Selection['leftOut'];
	modes: Record<Mode, Record<string, ModeScores>>;
	baselines: Record<string, Record<string, PhaseScores>>;
}

const FITTED_NOTES = {
	shipped:
		'prior and recalibrated use the parameters as shipped: they were fitted to a folder of winters like this one, so on that folder prior is not left out. --refit fits them anew without the lake that is scored',
	refitted: `prior and recalibrated use, for each lake, parameters fitted anew to the growth readings of the other lakes (${REFITTED.map(({ name }) => name).join(', ')}); the others, among them those of decay and ice-out, stay as shipped`
};

const NOTES = [
	'learned equals prior: what past winters taught a lake is not used yet',
	'crps_cm, coverage90 and coverage80 of the model are null: of its spread it states only the lower bound yet',
	'baselines take degree-days by plain daily means; the model splits each day by its range'
];

/** Scores every mode and every baseline on the same readings. */
export function report(
	{ winters, leftOut }: Selection,
	parameters: Report['parameters'],
	parametersOf: ParametersOf
): Report {
	const prior = modeScores(
		priorPredictions(winters, parametersOf),
		iceOutForecasts(winters, false, parametersOf)
	);
	const recalibrated = modeScores(
		recalibratedPredictions(winters, parametersOf),
		iceOutForecasts(winters, true, parametersOf)
	);
	return {
		parameters,
		notes: [FITTED_NOTES[parameters], ...NOTES],
		winters: winters.length,
		leftOut,
		modes: { prior, learned: prior, recalibrated },
		baselines: baselineScores(winters)
	};
}

function modeScores(
	predictions: readonly Prediction[],
	iceOut: readonly IceOutForecast[]
): Record<string, ModeScores> {
	const inGroup = (group: string) =>
		iceOut.filter(({ winter }) => group === 'all' || winter.dataset === group);
	return Object.fromEntries(
		Object.entries(groupScores(predictions)).map(([group, scores]) => [
			group,
			{ ...scores, iceOut: iceOutScores(inGroup(group)) }
		])
	);
}

function baselineScores(winters: readonly LakeWinter[]): Report['baselines'] {
	return Object.fromEntries(
		baselinesFor(winters).map((baseline) => [
			baseline.id,
			groupScores(baselinePredictions(baseline, winters))
		])
	);
}
