import { dayNumber, type IsoDate } from '../calendar.ts';
import type { LakeFacts } from '../lake.ts';
import type { Parameters } from '../parameters.ts';
import type { Reading } from '../reading.ts';
import type { SiteEvent } from '../site-winter.ts';
import type { WeatherDay } from '../weather.ts';
import { meanOf, varianceOf } from './kalman.ts';
import { solve, triangularRoot } from './linear.ts';
import { observations, predicted } from './observation.ts';
import { seededRandom } from './random.ts';
import { runEnsemble, type EnsembleInput } from './run.ts';
import { drawTraits } from './traits.ts';

/** What past winters taught a site: where its traits lie, and how far they may lie from there. */
export interface SiteMemory {
	readonly mean: readonly number[];
	/** Triangular root of the covariance. */
	readonly root: readonly (readonly number[])[];
	readonly winters: number;
	readonly readings: number;
}

/** A winter that is over, with what was read in it. */
export interface PastWinter {
	freezeUpOn: IsoDate;
	freezeUpBy: IsoDate | null;
	weather: readonly WeatherDay[];
	events: readonly SiteEvent[];
	readings: readonly Reading[];
}

/** One thickness read in a past winter, with what each member had said before. */
export interface Evidence {
	readonly traits: readonly Float64Array[];
	readonly predicted: Float64Array;
	readonly value: number;
	readonly sd: number;
}

const MEMBERS = 300;
const SEED = 20_261; // the same traits of the site in every winter, all else drawn anew in each
/** What the model gets wrong in a winter whatever its parameters. From the measured winters [C]. */
const STRUCTURAL_m = 0.05;
/** A reading further from its winter, in standard deviations, teaches nothing. */
const BELIEVED_TO = 4;
/** Added to what is left of the spread, so that one odd winter does not rule the next. */
const WIDENING = 0.3;

/**
 * What a winter's readings have to say of the site's traits: those up to its thickest. Later ones tell
 * of the thaw, whose errors are the weather's more than the site's, and would pull growth after them.
 */
export function evidenceOf(
	winter: PastWinter,
	lake: LakeFacts,
	parameters?: Parameters
): Evidence[] {
	const traits = drawTraits(MEMBERS, seededRandom(SEED)).site;
	const measured = winter.readings
		.filter(({ kind }) => kind === 'measured')
		.toSorted((a, b) => (a.on < b.on ? -1 : 1));
	const last = measured.at(-1)?.on;
	if (last === undefined) return [];
	const evidence: Evidence[] = [];
	const input: EnsembleInput = {
		...winter,
		lake,
		until: last,
		scenarios: [],
		readings: [],
		memory: null,
		members: MEMBERS,
		seed: SEED + dayNumber(winter.freezeUpOn),
		siteTraits: traits,
		...(parameters ? { parameters } : {})
	};
	runEnsemble(input, ({ on, members }) => {
		for (const reading of measured) {
			if (reading.on !== on) continue;
			const says = predicted('total', members);
			for (const { of, value, sd } of observations(reading, meanOf(says))) {
				if (of !== 'total') continue;
				const told = { traits, predicted: says, value, sd: Math.hypot(sd, STRUCTURAL_m) };
				if (isBelievable(told)) evidence.push(told);
			}
		}
	});
	return throughThickest(evidence);
}

/** A slip of the pen of years ago, which nobody will ask about any more, must not teach. */
function isBelievable({ predicted, value, sd }: Evidence): boolean {
	const off = (value - meanOf(predicted)) / Math.sqrt(varianceOf(predicted) + sd * sd);
	return Math.abs(off) <= BELIEVED_TO;
}

function throughThickest(evidence: readonly Evidence[]): Evidence[] {
	const thickness_m = evidence.map(({ value }) => value);
	return evidence.slice(0, thickness_m.indexOf(Math.max(0, ...thickness_m)) + 1);
}

/**
 * The site's traits after all evidence at once (an ensemble smoother), `null` without any.
 *
 *   m = C_zy (C_yy + R)⁻¹ (d - ȳ),  P = I - C_zy (C_yy + R)⁻¹ C_yz + w² I
 *
 * Winter to winter differences and paces are in the members' own disagreement, hence in C_yy, so that
 * the readings of one winter don't count as independent. Source: [Evensen2009] [M-hi].
 */
export function learn(evidence: readonly Evidence[], winters: number): SiteMemory | null {
	const traits = evidence[0]?.traits;
	if (traits === undefined) return null;
	const says = evidence.map(({ predicted }) => centred(predicted));
	const own = traits.map(centred);
	const spread = says.map((a, i) =>
		says.map((b, j) => dot(a, b) + (i === j ? (evidence[i]?.sd ?? 0) ** 2 : 0))
	);
	const root = triangularRoot(spread);
	const cross = own.map((z) => says.map((y) => dot(z, y)));
	const gaps = evidence.map(({ value, predicted }) => value - meanOf(predicted));
	const weights = solve(root, gaps);
	const gains = cross.map((row) => solve(root, row));
	const mean = cross.map((row) => sum(row, weights));
	const left = cross.map((row, i) =>
		cross.map((_, j) => {
			const prior = i === j ? 1 + WIDENING ** 2 : 0;
			return prior - sum(row, gains[j] ?? []);
		})
	);
	return { mean, root: triangularRoot(left), winters, readings: evidence.length };
}

function centred(values: Float64Array): Float64Array {
	const mean = meanOf(values);
	return values.map((value) => value - mean);
}

/** Covariance of two arrays whose means have been taken off. */
function dot(a: Float64Array, b: Float64Array): number {
	let total = 0;
	for (let i = 0; i < a.length; i++) total += (a[i] ?? 0) * (b[i] ?? 0);
	return total / Math.max(1, a.length - 1);
}

function sum(a: readonly number[], b: readonly number[]): number {
	return a.reduce((total, value, i) => total + value * (b[i] ?? 0), 0);
}
