import type { Prediction, Score } from './scores.ts';
import { score } from './scores.ts';

/** Growth readings up to here are early ice. */
export const EARLY_m = 0.2;

/** A third of the growth readings of a group, by measured thickness. */
export interface Third extends Score {
	from_cm: number;
	to_cm: number;
}

export interface PhaseScores {
	growth: Score & { thirds: Third[] };
	early: Score;
	decay: Score;
	/** Growth and decay together. */
	both: Score;
}

/** The scores of each dataset, and of `all` together. */
export function groupScores(predictions: readonly Prediction[]): Record<string, PhaseScores> {
	const datasets = [...new Set(predictions.map(({ of }) => of.winter.dataset))];
	const groups: Record<string, PhaseScores> = { all: phaseScores(predictions) };
	for (const dataset of datasets)
		groups[dataset] = phaseScores(predictions.filter(({ of }) => of.winter.dataset === dataset));
	return groups;
}

function phaseScores(predictions: readonly Prediction[]): PhaseScores {
	const growth = predictions.filter(({ of }) => of.reading.phase === 'growth');
	const decay = predictions.filter(({ of }) => of.reading.phase === 'decay');
	const early = growth.filter(({ of }) => of.reading.total_m <= EARLY_m);
	return {
		growth: { ...score(growth), thirds: thirds(growth) },
		early: score(early),
		decay: score(decay),
		both: score(predictions)
	};
}

/** Equal thicknesses stay together, so that thirds may differ a little in size. */
function thirds(growth: readonly Prediction[]): Third[] {
	const measured_m = growth.map(({ of }) => of.reading.total_m).toSorted((a, b) => a - b);
	const at = (share: number) => measured_m[Math.floor(measured_m.length * share)] ?? 0;
	const bounds_m = [-Infinity, at(1 / 3), at(2 / 3), Infinity];
	return [0, 1, 2].flatMap((third) => {
		const from_m = bounds_m[third] ?? 0;
		const to_m = bounds_m[third + 1] ?? 0;
		const inside = growth.filter(
			({ of }) => of.reading.total_m >= from_m && of.reading.total_m < to_m
		);
		const thicknesses_cm = inside.map(({ of }) => of.reading.total_m * 100);
		if (inside.length === 0) return [];
		return [
			{
				from_cm: Math.min(...thicknesses_cm),
				to_cm: Math.max(...thicknesses_cm),
				...score(inside)
			}
		];
	});
}
