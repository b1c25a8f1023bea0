import type { IsoDate } from '../calendar.ts';
import type { IceColumn } from '../column.ts';
import type { Quantiles } from '../forecast.ts';
import type { Reading } from '../reading.ts';
import { finish, type Steps } from '../steps.ts';
import type { DaySource } from '../weather.ts';
import { boundsOf, copyHolds, NO_GAPS, noHolds } from './bounds.ts';
import type { Bounds, GapsTake, Holds } from './bounds.ts';
import { trackIceOut, type IceOutTracker, type IceOutWindow } from './ice-out.ts';
import { trackLoss, type Loss, type LossTracker } from './loss.ts';
import { meanOf, varianceOf } from './kalman.ts';
import { median, quantilesOfLayers, sortLayers, type LayerName } from './layer-quantiles.ts';
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

export interface Estimate {
	days: EstimatedDay[];
	iceOut: IceOutWindow | null;
	/** What has been lost by `lossOn`; `null` where it was not asked for. */
	loss: Loss | null;
	/** What a run can go on from; `null` where it was not asked for. */
	kept: Kept | null;
}

/** A run up to a day, that one included. */
export interface Kept {
	days: readonly EstimatedDay[];
	iceOut: IceOutTracker;
	losses: LossTracker;
	holds: Holds;
	/** Days since a thickness was read last. */
	sinceRead_d: number;
	start: EnsembleStart;
}

export interface EstimateOptions {
	/** The day whose state is kept. */
	keepOn?: IsoDate;
	/** The day by which losses are told. */
	lossOn?: IsoDate;
	/** Goes on from an earlier run of the same input, instead of from freeze-up. */
	resume?: Kept;
	/** What gaps in the weather take from the bounds of a day; nothing without. */
	gapsOn?: (on: IsoDate) => GapsTake;
	/** Called for each day of the ensemble. */
	onDay?: (day: EnsembleDay) => void;
}

/** One run of a site's ensemble, put into what is told of each day. */
export function estimate(input: EnsembleInput, options: EstimateOptions = {}): Estimate {
	return finish(estimateSteps(input, options));
}

/** The same, a day a step. */
export function* estimateSteps(input: EnsembleInput, options: EstimateOptions): Steps<Estimate> {
	const { keepOn, resume, onDay, lossOn, gapsOn } = options;
	const losses = resume?.losses.copy() ?? trackLoss(input.members);
	let loss: Loss | null = resume?.start.on === lossOn ? losses.loss() : null;
	const days = [...(resume?.days ?? [])];
	const holds = resume ? copyHolds(resume.holds) : noHolds();
	const sort = sorterOf(input.members);
	const iceOut = resume?.iceOut.copy() ?? trackIceOut(input.members);
	let kept: Kept | null = null;
	let sinceRead_d = resume?.sinceRead_d ?? 0;
	for (const day of ensembleRun(resume ? { ...input, start: resume.start } : input)) {
		onDay?.(day);
		iceOut.see(day.on, day.members);
		if (day.on <= (lossOn ?? keepOn ?? '')) losses.see(day);
		if (day.on === lossOn) loss = losses.loss();
		if (day.recalibrations.some(({ off }) => off !== null)) sinceRead_d = 0;
		days.push(
			estimatedDay(day, input.readings, {
				holds,
				sort,
				sinceRead_d,
				gaps: gapsOn?.(day.on) ?? NO_GAPS
			})
		);
		sinceRead_d++;
		if (day.on === keepOn) {
			const soFar = {
				iceOut: iceOut.copy(),
				losses: losses.copy(),
				holds: copyHolds(holds),
				sinceRead_d
			};
			kept = { days: [...days], ...soFar, start: day.keep() };
		}
		yield;
	}
	return { days, iceOut: iceOut.window(), loss, kept };
}

interface DayContext {
	holds: Holds;
	sinceRead_d: number;
	gaps: GapsTake;
	sort: Sorter;
}

function estimatedDay(
	day: EnsembleDay,
	readings: readonly Reading[],
	{ holds, sinceRead_d, gaps, sort }: DayContext
): EstimatedDay {
	const { holes, before, members, recalibrations } = day;
	const sorted = sortLayers(holes, sort);
	const fiveSpots_m = sort(holes.thinnest_m);
	const effective = effectiveOf(members);
	const column = meanColumn(members, median(sorted.total_m), median(sorted.snow_m));
	return {
		on: day.on,
		source: day.source,
		quantiles: quantilesOfLayers(sorted),
		spot_m: sorted.effective_m,
		fiveSpots_m,
		bound: boundsOf(day, readings, holds, { ...sorted, thinnest_m: fiveSpots_m }, column, gaps),
		column,
		site: {
			mean_m: meanOf(effective),
			sd_m: Math.hypot(spreadOf(effective), drift_m(sinceRead_d))
		},
		before_m: before === null ? null : median(sort(before.total_m)),
		recalibrations
	};
}

function spreadOf(values: Float64Array): number {
	return Math.sqrt(varianceOf(values));
}
