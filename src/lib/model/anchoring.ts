import { total_m, type IceColumn } from './column.ts';
import { holeTotal_m } from './hole.ts';
import { holeMeans, mean, type HoleMeans } from './hole-layers.ts';
import type { Reading } from './reading.ts';
import { leastLiquid } from './rotten.ts';

const HOLE_SPREAD = 0.2; // spread of single holes about the site's mean, as a share of it [M-lo]
const DOUBTFUL_RATIO = 3;
const DOUBTFUL_EXCESS_m = 0.5;
const UNKNOWN_SNOW_kg_m3 = 250; // settled for days to weeks [M-hi]

/** The column after a day's readings, and what became of each. */
export interface Anchoring {
	column: IceColumn;
	/** Ids of readings that set the column or lifted it. */
	anchoredBy: string[];
	/** Ids of measured readings too far above the estimate to be believed. */
	doubtful: string[];
	/** A snow depth on the ice was measured. */
	snowMeasured: boolean;
}

/**
 * The estimate put where readings of the day say it is.
 *
 * Measured: each layer takes the mean over all holes that have it; where only the total is known
 * clear and white keep their proportion. At least: lifts a thinner sheet, to 80 % of the depth the
 * tool reached, since one hole may be at a thick spot (spread 20 % [M-lo]). Went through: a fact
 * about its place, changes nothing. A total more than three times the estimate and half a metre
 * above it is set aside as doubtful; one that is too thin always counts. What somebody else told sets
 * nothing here but rot, by a wet or candled core: it pulls the ensemble only.
 */
export function anchor(column: IceColumn, readings: readonly Reading[]): Anchoring {
	const seen = readings.filter((reading) => !reading.secondHand);
	const measured = seen.filter((reading) => reading.kind === 'measured');
	const doubtful = measured.filter((reading) => isDoubtful(column, reading));
	const believed = measured.filter((reading) => !doubtful.includes(reading) && saysMore(reading));
	const means = holeMeans(believed.flatMap((reading) => reading.holes));
	const set = withCores(withMeans(column, means), [...believed, ...rotToldOf(readings)]);
	const lifting = seen.filter(
		(reading) => reading.kind === 'atLeast' && lowerLimit_m(reading) > total_m(set)
	);
	const lifted = lifting.length > 0 ? withTotal(set, Math.max(...lifting.map(lowerLimit_m))) : set;
	return {
		column: lifted,
		anchoredBy: [...believed, ...lifting].map((reading) => reading.id),
		doubtful: doubtful.map((reading) => reading.id),
		snowMeasured: means.snow_m !== null
	};
}

function rotToldOf(readings: readonly Reading[]): Reading[] {
	return readings.filter(({ secondHand, core }) => secondHand && core !== null && core !== 'sound');
}

function isDoubtful(column: IceColumn, reading: Reading): boolean {
	const measured_m = mean(reading.holes.map(holeTotal_m));
	if (measured_m === null) return false;
	const estimate_m = total_m(column);
	return measured_m > DOUBTFUL_RATIO * estimate_m && measured_m - estimate_m > DOUBTFUL_EXCESS_m;
}

function saysMore(reading: Reading): boolean {
	const means = holeMeans(reading.holes);
	return reading.core !== null || Object.values(means).some((value) => value !== null);
}

function withMeans(column: IceColumn, means: HoleMeans): IceColumn {
	const ice = means.total_m === null ? column : withTotal(column, means.total_m, means.whiteShare);
	const snow_m = means.snow_m ?? column.snow_m;
	const slush_m = means.slush_m ?? column.slush_m;
	// Measured snow keeps the estimated density; where the estimate had none it is settled snow.
	const snowDensity_kg_m3 = column.snow_m > 0 ? column.snowDensity_kg_m3 : UNKNOWN_SNOW_kg_m3;
	return { ...ice, snow_m, slush_m, snowDensity_kg_m3 };
}

/** The column at another thickness, by default with the proportion of white ice it had. */
function withTotal(
	column: IceColumn,
	thickness_m: number,
	measuredShare: number | null = null
): IceColumn {
	const before_m = total_m(column);
	const share = measuredShare ?? (before_m > 0 ? column.white_m / before_m : 0);
	return { ...column, white_m: thickness_m * share, clear_m: thickness_m * (1 - share) };
}

function withCores(column: IceColumn, readings: readonly Reading[]): IceColumn {
	const cores = readings.map((reading) => reading.core);
	const least = leastLiquid(cores);
	if (least !== null) return { ...column, liquidFraction: Math.max(column.liquidFraction, least) };
	return cores.includes('sound') ? { ...column, liquidFraction: 0 } : column;
}

function lowerLimit_m(reading: Reading): number {
	const reached_m = Math.max(0, ...reading.holes.map((hole) => holeTotal_m(hole) ?? 0));
	return reached_m * (1 - HOLE_SPREAD);
}
