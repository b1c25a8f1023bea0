import type { IsoDate } from '../calendar.ts';
import type { IceColumn } from '../column.ts';
import type { Quantiles } from '../forecast.ts';
import { holeEffective_m, holeTotal_m, thicknessHoles } from '../hole.ts';
import type { Hole, Reading } from '../reading.ts';
import { finish, type Steps } from '../steps.ts';
import type { DaySource } from '../weather.ts';
import { holdBack, type BoundRead, type HeldBack } from './held-back.ts';
import { trackIceOut, type IceOutTracker, type IceOutWindow } from './ice-out.ts';
import { meanOf, varianceOf } from './kalman.ts';
import {
	lowerBound,
	median,
	quantilesOfLayers,
	sortLayers,
	type LayerName
} from './layer-quantiles.ts';
import { effectiveOf, meanColumn } from './mean-column.ts';
import { drift_m, type Recalibration } from './recalibrate.ts';
import { ensembleRun, type EnsembleDay, type EnsembleInput, type EnsembleStart } from './run.ts';
import { sorterOf, type Sorter } from './sorted.ts';

/** One day of a site as its ensemble has it, readings of the day taken in. */
export interface EstimatedDay {
	on: IsoDate;
	source: DaySource;
	/** What one hole at a random spot would show. */
	quantiles: Record<LayerName, Quantiles>;
	/** Effective thickness at a random spot and at the thinnest of five, a member a value, sorted. */
	spot_m: Float64Array;
	fiveSpots_m: Float64Array;
	/** Lower bounds to go by: what single readings raised is held back, thin ones count in full. */
	bound: Bounds;
	/** A column with the median thickness and snow, and the mean slush. */
	column: IceColumn;
	/** Mean and spread of the site's own effective thickness, with the model's drift since a reading. */
	site: { mean_m: number; sd_m: number };
	/** Median whole thickness without the day's readings; `null` on a day that has none. */
	before_m: number | null;
	recalibrations: readonly Recalibration[];
}

/** Of effective thickness at a random spot and at the thinnest of five, and of the whole at a spot. */
export interface Bounds {
	spot_m: number;
	fiveSpots_m: number;
	total_m: number;
}

type Holds = Record<keyof Bounds, HeldBack>;

export interface Estimate {
	days: EstimatedDay[];
	iceOut: IceOutWindow | null;
	/** What a run can go on from; `null` where it was not asked for. */
	kept: Kept | null;
}

/** A run up to a day, that one included. */
export interface Kept {
	days: readonly EstimatedDay[];
	iceOut: IceOutTracker;
	holds: Holds;
	/** Days since a thickness was read last. */
	sinceRead_d: number;
	start: EnsembleStart;
}

export interface EstimateOptions {
	/** The day whose state is kept. */
	keepOn?: IsoDate;
	/** Goes on from an earlier run of the same input, instead of from freeze-up. */
	resume?: Kept;
	/** Called for each day of the ensemble. */
	onDay?: (day: EnsembleDay) => void;
}

/** One run of a site's ensemble, put into what is told of each day. */
export function estimate(input: EnsembleInput, options: EstimateOptions = {}): Estimate {
	return finish(estimateSteps(input, options));
}

/** The same, a day a step. */
export function* estimateSteps(input: EnsembleInput, options: EstimateOptions): Steps<Estimate> {
	const { keepOn, resume, onDay } = options;
	const days = [...(resume?.days ?? [])];
	const holds = resume ? copyHolds(resume.holds) : noHolds();
	const sort = sorterOf(input.members);
	const iceOut = resume?.iceOut.copy() ?? trackIceOut(input.members);
	let kept: Kept | null = null;
	let sinceRead_d = resume?.sinceRead_d ?? 0;
	for (const day of ensembleRun(resume ? { ...input, start: resume.start } : input)) {
		onDay?.(day);
		iceOut.see(day.on, day.members);
		if (day.recalibrations.some(({ off }) => off !== null)) sinceRead_d = 0;
		days.push(estimatedDay(day, input.readings, holds, sinceRead_d++, sort));
		if (day.on === keepOn) {
			const soFar = { iceOut: iceOut.copy(), holds: copyHolds(holds), sinceRead_d };
			kept = { days: [...days], ...soFar, start: day.keep() };
		}
		yield;
	}
	return { days, iceOut: iceOut.window(), kept };
}

function noHolds(): Holds {
	return { spot_m: holdBack(), fiveSpots_m: holdBack(), total_m: holdBack() };
}

function copyHolds({ spot_m, fiveSpots_m, total_m }: Holds): Holds {
	return { spot_m: spot_m.copy(), fiveSpots_m: fiveSpots_m.copy(), total_m: total_m.copy() };
}

function estimatedDay(
	day: EnsembleDay,
	readings: readonly Reading[],
	hold: Holds,
	sinceRead_d: number,
	sort: Sorter
): EstimatedDay {
	const { holes, before, members, recalibrations } = day;
	const sorted = sortLayers(holes, sort);
	const fiveSpots_m = sort(holes.thinnest_m);
	const effective = effectiveOf(members);
	const column = meanColumn(members, median(sorted.total_m), median(sorted.snow_m));
	const count = countedHoles(recalibrations, readings);
	const thin = thinHoles(recalibrations, readings);
	const read = (layer: Float64Array | undefined, of: HoleHeight): BoundRead | null =>
		layer === undefined
			? null
			: {
					before_m: lowerBound(sort(layer)),
					holes: count,
					thinnest_m: thin.length > 0 ? Math.min(...thin.map(of)) : null
				};
	const effectiveHole: HoleHeight = (hole) => holeEffective_m(hole, column) ?? 0;
	return {
		on: day.on,
		source: day.source,
		quantiles: quantilesOfLayers(sorted),
		spot_m: sorted.effective_m,
		fiveSpots_m,
		bound: {
			spot_m: hold.spot_m(lowerBound(sorted.effective_m), read(before?.effective_m, effectiveHole)),
			fiveSpots_m: hold.fiveSpots_m(
				lowerBound(fiveSpots_m),
				read(before?.thinnest_m, effectiveHole)
			),
			total_m: hold.total_m(
				lowerBound(sorted.total_m),
				read(before?.total_m, (hole) => holeTotal_m(hole) ?? 0)
			)
		},
		column,
		site: {
			mean_m: meanOf(effective),
			sd_m: Math.hypot(spreadOf(effective), drift_m(sinceRead_d))
		},
		before_m: before === null ? null : median(sort(before.total_m)),
		recalibrations
	};
}

/** Holes of the day's readings that told a thickness and are not asked about. */
function countedHoles(
	recalibrations: readonly Recalibration[],
	readings: readonly Reading[]
): number {
	const counted = recalibrations.filter(({ isAskedAbout }) => !isAskedAbout);
	const ids = new Set(counted.map(({ readingId }) => readingId));
	return readings
		.filter(({ id }) => ids.has(id))
		.reduce((sum, reading) => sum + thicknessHoles(reading).length, 0);
}

type HoleHeight = (hole: Hole) => number;

/** Holes of readings that were thinner than expected. */
function thinHoles(
	recalibrations: readonly Recalibration[],
	readings: readonly Reading[]
): readonly Hole[] {
	const thin = recalibrations.filter(({ off }) => (off ?? 0) < 0);
	const ids = new Set(thin.map(({ readingId }) => readingId));
	return readings.filter(({ id }) => ids.has(id)).flatMap(thicknessHoles);
}

function spreadOf(values: Float64Array): number {
	return Math.sqrt(varianceOf(values));
}
