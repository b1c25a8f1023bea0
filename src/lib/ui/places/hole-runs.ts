import type { HolePlan } from '#lib/model/places/hole-plan.ts';
import { spacing, way } from '../format/way.ts';
import type { Units } from '../units-setting.ts';

/** Steps within this of each other read as one. */
const ALIKE_m = 0.05;

/** Holes that follow each other in even steps. */
export interface HoleRun {
	step_m: number;
	to_m: number;
	holes: number;
}

/** A plan as few lines: so far apart up to there, then so far. */
function holeRuns({ holes }: HolePlan): HoleRun[] {
	const runs: HoleRun[] = [];
	for (const [index, { at_m }] of holes.entries()) {
		if (index === 0) continue;
		const step_m = at_m - (holes[index - 1]?.at_m ?? 0);
		const last = runs.at(-1);
		if (last && Math.abs(last.step_m - step_m) < ALIKE_m) {
			last.to_m = at_m;
			last.holes += 1;
		} else runs.push({ step_m, to_m: at_m, holes: 1 });
	}
	return runs;
}

/** @example '11 holes on 200 m: where the ice begins, every 10 m to 50 m, every 30 m to 200 m' */
export function holeRunWords(plan: HolePlan, units: Units, most = Infinity): string {
	const runs = holeRuns(plan);
	const told = runs
		.slice(0, most)
		.map(({ step_m, to_m }) => `every ${spacing(step_m, units)} to ${way(to_m, units)}`);
	const rest = runs.length > most ? [`and ${runs.length - most} stretches more`] : [];
	const total = `${plan.holes.length} holes on ${way(plan.length_m, units)}`;
	return `${total}: the first at the start, then ${[...told, ...rest].join(', ')}.`;
}
