import { LONGEST_m, type HolePlan, type Planned } from '#lib/model/places/hole-plan.ts';
import type { TableRow } from '../components/ScrollTable.svelte';
import { way } from '../format/way.ts';
import type { Units } from '../units-setting.ts';
import { listed } from './route-words.ts';

/** Columns to fill in with a pencil. */
const BLANKS = ['', '', ''];

/** One row a hole, with room to write at its end. */
export function holeRows({ holes }: HolePlan, names: readonly string[], units: Units): TableRow[] {
	return holes.map(({ at_m, after, after_m, isAtPoint, position }, index) => ({
		id: String(index),
		cells: [
			String(index + 1),
			way(at_m, units),
			names[after] ?? '',
			isAtPoint ? 'at it' : way(after_m, units),
			position ? `${position.latitude.toFixed(5)}, ${position.longitude.toFixed(5)}` : '',
			...BLANKS
		]
	}));
}

/** Why there is no plan, and the remedy. */
export function notPlannedWords(
	planned: Exclude<Planned, { status: 'planned' }>,
	names: readonly string[],
	units: Units
): string {
	switch (planned.status) {
		case 'tooFewPoints':
			return 'A plan needs two points at least.';
		case 'tooLong':
			return `The route has ${way(planned.length_m, units)}; up to ${way(LONGEST_m, units)} is planned at once. Make parts of it.`;
		case 'lengthNotKnown':
			return `How far it is to ${listed(planned.to.map((index) => names[index] ?? ''))} is not known: give both ends a position, or type the way from the point before.`;
	}
}
