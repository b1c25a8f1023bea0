import { freeboard_m, buoyancy_kg_m2 } from '../flooding.ts';
import { holeTotal_m } from '../hole.ts';
import { holeMeans, type HoleMeans } from '../hole-layers.ts';
import type { Hole, Reading } from '../reading.ts';
import type { Members } from './members.ts';
import { holeScatter_m, placeScatter_m, TAPE_m } from './scatter.ts';

/** What a reading says of one quantity of the site. */
export interface Observation {
	readonly of: 'total' | 'whiteShare' | 'snow' | 'slush' | 'freeboard';
	readonly value: number;
	readonly sd: number;
	/** The site has at least this much: nothing to learn where it has more. */
	readonly isLeast: boolean;
}

const WHITE_SHARE_SD = 0.2; // of white ice as seen in a hole about the site's [M-lo]
const COVER_LEAST_m = 0.02;
const COVER_FRACTION = 0.4; // drifts [R] [Sturm2003]; size [M-lo]
const FREEBOARD_m = 0.02; // of a water level in a hole [M-lo]
const TOLD_m = 0.03; // as of an estimate instead of a tape in a hole [derived]
const TOLD_SHARE_SD = 0.3; // half as much again as seen in the hole; our choice

/**
 * A reading taken apart into what it measured. Several holes of one place share the scatter of the
 * place and average that of the holes:
 *
 *   σ² = σ_place(h)² + (σ_hole(h)² + (1 cm)²)/n
 *
 * h is the thickness expected, not the one measured: else a thin reading would be taken for an exact
 * one and pull harder than a thick one. "Went through" is a fact about its place and says nothing of the site.
 * What somebody else told has 3 cm more, which its holes share: one memory told them all.
 */
export function observations(reading: Reading, expected_m: number): Observation[] {
	if (reading.kind === 'wentThrough') return [];
	const means = holeMeans(reading.holes);
	const isLeast = reading.kind === 'atLeast';
	const total = totalOf(reading.holes, means, isLeast, expected_m);
	const found = isLeast ? total : [...total, ...layersOf(reading, means)];
	return reading.secondHand ? found.map(asTold) : found;
}

function layersOf({ holes }: Reading, means: HoleMeans): Observation[] {
	return [
		...whiteOf(means),
		...coverOf('snow', means.snow_m, holes.length),
		...coverOf('slush', means.slush_m, holes.length),
		...freeboardOf(holes)
	];
}

function asTold(seen: Observation): Observation {
	const sd = seen.of === 'whiteShare' ? TOLD_SHARE_SD : Math.hypot(seen.sd, TOLD_m);
	return { ...seen, sd };
}

function totalOf(
	holes: readonly Hole[],
	means: HoleMeans,
	isLeast: boolean,
	expected_m: number
): Observation[] {
	const value = means.total_m;
	if (value === null) return [];
	const count = Math.max(1, holes.filter((hole) => holeTotal_m(hole) !== null).length);
	const hole_m = Math.hypot(holeScatter_m(expected_m), TAPE_m);
	const sd = Math.hypot(placeScatter_m(expected_m), hole_m / Math.sqrt(count));
	return [{ of: 'total', value, sd, isLeast }];
}

function whiteOf({ whiteShare }: HoleMeans): Observation[] {
	if (whiteShare === null) return [];
	return [{ of: 'whiteShare', value: whiteShare, sd: WHITE_SHARE_SD, isLeast: false }];
}

function coverOf(of: 'snow' | 'slush', value: number | null, count: number): Observation[] {
	if (value === null) return [];
	const sd = Math.hypot(COVER_LEAST_m, COVER_FRACTION * value) / Math.sqrt(count);
	return [{ of, value, sd, isLeast: false }];
}

function freeboardOf(holes: readonly Hole[]): Observation[] {
	const levels = holes.flatMap(({ freeboard_m }) => (freeboard_m === null ? [] : [freeboard_m]));
	if (levels.length === 0) return [];
	const value = levels.reduce((sum, level) => sum + level, 0) / levels.length;
	return [{ of: 'freeboard', value, sd: FREEBOARD_m, isLeast: false }];
}

/** What each member says the observed quantity is. */
export function predicted(of: Observation['of'], members: Members): Float64Array {
	const says = new Float64Array(members.count);
	for (let i = 0; i < says.length; i++) says[i] = predictedBy(members, i, of);
	return says;
}

function predictedBy(members: Members, i: number, of: Observation['of']): number {
	const clear_m = members.clear_m[i] ?? 0;
	const white_m = members.white_m[i] ?? 0;
	const snow_m = members.snow_m[i] ?? 0;
	if (of === 'total') return clear_m + white_m;
	if (of === 'whiteShare') return clear_m + white_m > 0 ? white_m / (clear_m + white_m) : 0;
	if (of === 'snow') return snow_m;
	if (of === 'slush') return members.slush_m[i] ?? 0;
	const load_kg_m2 = snow_m * (members.snowDensity_kg_m3[i] ?? 0);
	return freeboard_m(buoyancy_kg_m2(clear_m, white_m), load_kg_m2);
}
