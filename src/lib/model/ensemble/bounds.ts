import type { IceColumn } from '../column.ts';
import { holeEffective_m, holeTotal_m, thicknessHoles } from '../hole.ts';
import type { Hole, Reading } from '../reading.ts';
import { holdBack, type HeldBack } from './held-back.ts';
import { lowerBound } from './layer-quantiles.ts';
import type { Recalibration } from './recalibrate.ts';
import type { EnsembleDay } from './run.ts';
import type { Holes } from './spots.ts';

/** Of effective thickness at a random spot and at the thinnest of five, and of the whole at a spot. */
export interface Bounds {
	spot_m: number;
	fiveSpots_m: number;
	total_m: number;
}

/** What readings have raised each bound by and is still held back. */
export type Holds = Record<keyof Bounds, HeldBack>;

export function noHolds(): Holds {
	return { spot_m: holdBack(), fiveSpots_m: holdBack(), total_m: holdBack() };
}

export function copyHolds({ spot_m, fiveSpots_m, total_m }: Holds): Holds {
	return { spot_m: spot_m.copy(), fiveSpots_m: fiveSpots_m.copy(), total_m: total_m.copy() };
}

/** A day's holes, each layer sorted. */
export type SortedHoles = Pick<Holes, 'effective_m' | 'thinnest_m' | 'total_m'>;

/** What gaps in the weather take from the bounds of a day, and what they would take without its holes. */
export interface GapsTake {
	gaps_m: number;
	unread_m: number;
}

export const NO_GAPS: GapsTake = { gaps_m: 0, unread_m: 0 };

/**
 * The lower bounds to go by after a day's readings: those seen are taken first, then those that somebody
 * else told, whose holes raise nothing and confirm nothing; that they are thin counts like any.
 */
export function boundsOf(
	day: EnsembleDay,
	readings: readonly Reading[],
	holds: Holds,
	now: SortedHoles,
	column: IceColumn,
	gaps: GapsTake
): Bounds {
	const steps = boundSteps(day, readings);
	const effective_m: HoleHeight = (hole) => holeEffective_m(hole, column) ?? 0;
	const whole_m: HoleHeight = (hole) => holeTotal_m(hole) ?? 0;
	const shown = (name: keyof Bounds, layer: keyof SortedHoles, heightOf: HoleHeight) =>
		shown_m(holds[name], now, layer, { steps, heightOf, gaps });
	const total_m = shown('total_m', 'total_m', whole_m);
	// Each is held back by itself, and ice counts as no more than there is of it.
	return {
		spot_m: Math.min(total_m, shown('spot_m', 'effective_m', effective_m)),
		fiveSpots_m: Math.min(total_m, shown('fiveSpots_m', 'thinnest_m', effective_m)),
		total_m
	};
}

type HoleHeight = (hole: Hole) => number;

interface BoundStep {
	before: Holes;
	/** `null` after the last step: the day's own holes. */
	after: Holes | null;
	/** Holes that may raise: of a thickness that is not asked about and that nobody else told. */
	counted: number;
	/** Holes of readings that were thinner than expected. */
	thin: readonly Hole[];
}

function boundSteps(day: EnsembleDay, readings: readonly Reading[]): BoundStep[] {
	const { before, beforeTold, recalibrations } = day;
	if (before === null) return [];
	const taken = idsOf(recalibrations);
	// A tool that stuck above what is expected anyway has told nothing of how thick the ice is.
	const believed = idsOf(
		recalibrations.filter(({ off, isAskedAbout }) => off !== null && !isAskedAbout)
	);
	const thin = idsOf(recalibrations.filter(({ off }) => (off ?? 0) < 0));
	const step = (told: boolean, from: Holes, after: Holes | null): BoundStep[] => {
		const of = readings.filter(({ id, secondHand }) => taken.has(id) && secondHand === told);
		if (of.length === 0) return [];
		const counted = of.filter(({ id }) => !told && believed.has(id)).flatMap(thicknessHoles);
		const thinHoles = of.filter(({ id }) => thin.has(id)).flatMap(thicknessHoles);
		return [{ before: from, after, counted: counted.length, thin: thinHoles }];
	};
	if (beforeTold === null) return step(false, before, null);
	return [...step(false, before, beforeTold), ...step(true, beforeTold, null)];
}

function idsOf(recalibrations: readonly Recalibration[]): Set<string> {
	return new Set(recalibrations.map(({ readingId }) => readingId));
}

interface Taking {
	steps: readonly BoundStep[];
	heightOf: HoleHeight;
	gaps: GapsTake;
}

function shown_m(
	hold: HeldBack,
	now: SortedHoles,
	layer: keyof SortedHoles,
	{ steps, heightOf, gaps: { gaps_m, unread_m } }: Taking
): number {
	const bound_m = lowerBound(now[layer]);
	const boundOf = (holes: Holes) => lowerBound(holes[layer].toSorted());
	if (steps.length === 0) return hold(bound_m, null, gaps_m);
	return steps.reduce((_, { before, after, counted, thin }, index) => {
		const thinnest_m = thin.length > 0 ? Math.min(...thin.map(heightOf)) : null;
		const before_m = boundOf(before);
		const read = {
			before_m,
			gaps_m: index === 0 ? unread_m : gaps_m,
			holes: counted,
			thinnest_m
		};
		return hold(after === null ? bound_m : boundOf(after), read, gaps_m);
	}, bound_m);
}
