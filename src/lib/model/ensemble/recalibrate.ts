import type { Reading } from '../reading.ts';
import { assimilate, meanOf, ROBUST_FROM, type Movable } from './kalman.ts';
import type { Members } from './members.ts';
import { observations, predicted, type Observation } from './observation.ts';
import type { Paces } from './pace.ts';
import { normalDraws } from './random.ts';
import type { Traits } from './traits.ts';

/** How much of what a reading calls for the parameters take: the state first, they with care. */
const TRAIT_GAIN = 0.15;
/** Growth of the model's own error between readings, a day. Set by skill on the measured winters. */
const DRIFT_m_per_sqrt_d = 0.009;
const DRIFT_LONGEST_d = 40;
const SETTLED_SNOW_kg_m3 = 250; // settled for days to weeks [M-hi]

/** What a reading did to the ensemble. */
export interface Recalibration {
	readonly readingId: string;
	/** Standard deviations that its thickness was off before it was taken in; `null` if none was. */
	readonly off: number | null;
	readonly isAskedAbout: boolean;
}

/**
 * Pulls the members to a reading.
 *
 * An ensemble Kalman filter with the state first. Tried on the measured winters beside it: weights
 * on members alone, which starve after a few readings, and parameters with full gain, which forget
 * too much of a winter by one hole. The drift of the model's error between readings is what made the
 * most of the skill: without it the ensemble is too sure and follows readings too little.
 */
export function recalibrate(
	reading: Reading,
	daysSinceLast: number,
	ensemble: { members: Members; traits: Traits; paces: Paces },
	random: () => number
): Recalibration {
	const { members, traits, paces } = ensemble;
	const expected_m = meanOf(predicted('total', members));
	const says = observations(reading, expected_m).filter(
		({ isLeast, value }) => !(isLeast && value <= expected_m)
	);
	if (says.some(({ of }) => of === 'total')) drift(members, daysSinceLast, random);
	let off: number | null = null;
	for (const observation of says) {
		const movables = movablesOf(observation.of, members, traits, paces);
		const before = observation.of === 'whiteShare' ? sumOf(members) : null;
		const moved = take(observation, members, movables, random);
		if (observation.of === 'total') off = moved;
		if (before !== null) keepTotal(members, before);
		tidy(members);
	}
	return {
		readingId: reading.id,
		off,
		isAskedAbout: off !== null && Math.abs(off) > ROBUST_FROM
	};
}

function take(
	{ of, value, sd }: Observation,
	members: Members,
	movables: readonly Movable[],
	random: () => number
): number {
	const measured = { predicted: predicted(of, members), value, sd };
	return assimilate(measured, movables, normalDraws(members.count, random));
}

/** What an observation may move: thickness moves nearly all, the others their own layer. */
function movablesOf(
	of: Observation['of'],
	members: Members,
	traits: Traits,
	paces: Paces
): Movable[] {
	const full = (values: Float64Array): Movable => ({ values, gain: 1 });
	if (of === 'whiteShare') return [full(members.white_m)];
	if (of === 'slush') return [full(members.slush_m)];
	if (of === 'snow' || of === 'freeboard') return [full(members.snow_m)];
	return [
		...[members.clear_m, members.white_m, members.slush_m, members.snow_m].map(full),
		...[members.liquidFraction, paces.frost, paces.thaw].map(full),
		...[...traits.site, ...traits.winter].map((values) => ({ values, gain: TRAIT_GAIN }))
	];
}

/** How far the model may have drifted in so many days since a reading. */
export function drift_m(days: number): number {
	return DRIFT_m_per_sqrt_d * Math.sqrt(Math.min(DRIFT_LONGEST_d, days));
}

/** The model's own error since the last reading, which members do not share. */
function drift(members: Members, days: number, random: () => number): void {
	const size_m = drift_m(days);
	const noise = normalDraws(members.count, random);
	for (let i = 0; i < members.count; i++) {
		const clear_m = members.clear_m[i] ?? 0;
		if (clear_m > 0) members.clear_m[i] = Math.max(0, clear_m + size_m * (noise[i] ?? 0));
	}
}

function sumOf({ clear_m, white_m }: Members): Float64Array {
	return clear_m.map((clear, i) => clear + (white_m[i] ?? 0));
}

function keepTotal(members: Members, total_m: Float64Array): void {
	for (let i = 0; i < members.count; i++) {
		const all_m = total_m[i] ?? 0;
		const white_m = Math.min(all_m, Math.max(0, members.white_m[i] ?? 0));
		members.white_m[i] = white_m;
		members.clear_m[i] = all_m - white_m;
	}
}

/** Puts back what a straight line has pushed past what ice can be. */
function tidy(members: Members): void {
	const { clear_m, white_m, snow_m, slush_m, crust_m, liquidFraction } = members;
	for (let i = 0; i < members.count; i++) {
		const total = Math.max(0, (clear_m[i] ?? 0) + (white_m[i] ?? 0));
		white_m[i] = Math.min(total, Math.max(0, white_m[i] ?? 0));
		clear_m[i] = total - (white_m[i] ?? 0);
		snow_m[i] = Math.max(0, snow_m[i] ?? 0);
		slush_m[i] = Math.max(0, slush_m[i] ?? 0);
		crust_m[i] = Math.min(crust_m[i] ?? 0, white_m[i] ?? 0);
		liquidFraction[i] = Math.min(1, Math.max(0, liquidFraction[i] ?? 0));
		if ((members.snowDensity_kg_m3[i] ?? 0) <= 0) members.snowDensity_kg_m3[i] = SETTLED_SNOW_kg_m3;
	}
}
