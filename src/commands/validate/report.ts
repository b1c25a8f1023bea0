import { baselinePredictions } from './baseline-spread.ts';
import { baselinesFor } from './baselines.ts';
import type { PhaseScores } from './groups.ts';
import { groupScores } from './groups.ts';
import type { IceOutScores } from './ice-out.ts';
import { iceOutScores } from './ice-out.ts';
import { MEMBERS } from './ensemble-winter.ts';
import type { Findings, Mode, ModeFindings } from './findings.ts';
import type { LakeWinter } from './lake-winter.ts';
import { REFITTED } from './refit.ts';
import type { Selection } from './selection.ts';

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
		'all modes use the parameters as shipped: they were fitted to a folder of winters like this one, so on that folder prior is not left out. --refit fits them anew without the lake that is scored',
	refitted: `all modes use, for each lake, parameters fitted anew to the growth readings of the other lakes (${REFITTED.map(({ name }) => name).join(', ')}); the others, among them those of decay and ice-out and the spreads of the ensemble, stay as shipped`
};

const NOTES = [
	`estimates are of what a hole at a random spot would show, by ${MEMBERS} members: the median, the band from 5 to 95 %, the bound at 10 %, the crps of the members as they are`,
	'learned also knows the readings of the other winters of the lake, earlier and later ones; recalibrated knows those and the earlier readings of the same winter',
	'ice-out is foretold as the median of the members, cov80 is the share inside their window from 10 to 90 %',
	'baselines take degree-days by plain daily means; the model splits each day by its range'
];

/** Scores every mode and every baseline on the same readings. */
export function report(
	{ winters, leftOut }: Selection,
	parameters: Report['parameters'],
	findings: Findings
): Report {
	return {
		parameters,
		notes: [FITTED_NOTES[parameters], ...NOTES],
		winters: winters.length,
		leftOut,
		modes: {
			prior: modeScores(findings.prior),
			learned: modeScores(findings.learned),
			recalibrated: modeScores(findings.recalibrated)
		},
		baselines: baselineScores(winters)
	};
}

function modeScores({ predictions, iceOut }: ModeFindings): Record<string, ModeScores> {
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
