import { total_m, type IceColumn } from './column.ts';
import type { Hole, Reading } from './reading.ts';

const HOLE_SPREAD = 0.2; // spread of single holes about the site's mean, as a share of it [M-lo]
const DOUBTFUL_RATIO = 3;
const DOUBTFUL_EXCESS_m = 0.5;
const LIQUID_WET = 0.1; // a third of the strength left by [Bulatov1970]
const LIQUID_CANDLED = 0.3; // a tenth of the strength left by [Bulatov1970]

/** The column after a day's readings, and what became of each. */
export interface Anchoring {
	column: IceColumn;
	/** Ids of readings that set the column or lifted it. */
	anchoredBy: string[];
	/** Ids of measured readings too far above the estimate to be believed without another. */
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
 * above it is set aside as doubtful; one that is too thin always counts.
 */
export function anchor(column: IceColumn, readings: readonly Reading[]): Anchoring {
	const measured = readings.filter((reading) => reading.kind === 'measured');
	const doubtful = measured.filter((reading) => isDoubtful(column, reading));
	const believed = measured.filter((reading) => !doubtful.includes(reading) && saysMore(reading));
	const holes = believed.flatMap((reading) => reading.holes);
	const set = withCores(withHoles(column, holes), believed);
	const lifted = readings.filter(
		(reading) => reading.kind === 'atLeast' && lowerLimit_m(reading) > total_m(set)
	);
	const limit_m = Math.max(0, ...lifted.map(lowerLimit_m));
	return {
		column: limit_m > total_m(set) ? withTotal(set, limit_m) : set,
		anchoredBy: [...believed, ...lifted].map((reading) => reading.id),
		doubtful: doubtful.map((reading) => reading.id),
		snowMeasured: holes.some((hole) => hole.snow_m !== null)
	};
}

function isDoubtful(column: IceColumn, reading: Reading): boolean {
	const measured_m = mean(reading.holes.map(holeTotal_m));
	if (measured_m === null) return false;
	const estimate_m = total_m(column);
	return measured_m > DOUBTFUL_RATIO * estimate_m && measured_m - estimate_m > DOUBTFUL_EXCESS_m;
}

function saysMore(reading: Reading): boolean {
	if (reading.core !== null) return true;
	return reading.holes.some((hole) =>
		[hole.total_m, hole.clear_m, hole.white_m, hole.snow_m, hole.slush_m].some((x) => x !== null)
	);
}

function withHoles(column: IceColumn, holes: readonly Hole[]): IceColumn {
	const snow_m = mean(holes.map((hole) => hole.snow_m)) ?? column.snow_m;
	const slush_m = mean(holes.map((hole) => hole.slush_m)) ?? column.slush_m;
	return { ...withIce(column, holes), snow_m, slush_m, snowDensity_kg_m3: densityFor(column) };
}

const UNKNOWN_DENSITY_kg_m3 = 250; // settled for days to weeks [M-hi]

/** Measured snow keeps the estimated density; where the estimate had none it is settled snow. */
function densityFor(column: IceColumn): number {
	return column.snow_m > 0 ? column.snowDensity_kg_m3 : UNKNOWN_DENSITY_kg_m3;
}

function withIce(column: IceColumn, holes: readonly Hole[]): IceColumn {
	const total = mean(holes.map(holeTotal_m));
	const clear = mean(holes.map(holeClear_m));
	const white = mean(holes.map(holeWhite_m));
	if (total === null)
		return { ...column, clear_m: clear ?? column.clear_m, white_m: white ?? column.white_m };
	if (clear === null && white === null) return withTotal(column, total);
	const whiteShare = clear === null ? share(white ?? 0, total) : share(total - clear, total);
	return { ...column, clear_m: total * (1 - whiteShare), white_m: total * whiteShare };
}

/** The column at another thickness, clear and white in proportion; new ice is clear. */
export function withTotal(column: IceColumn, thickness_m: number): IceColumn {
	const whiteShare = share(column.white_m, total_m(column));
	const white_m = thickness_m * whiteShare;
	return { ...column, white_m, clear_m: thickness_m - white_m };
}

function share(part: number, whole: number): number {
	return whole > 0 ? Math.min(1, Math.max(0, part / whole)) : 0;
}

function withCores(column: IceColumn, readings: readonly Reading[]): IceColumn {
	const cores = readings.map((reading) => reading.core);
	if (cores.includes('candled'))
		return { ...column, liquidFraction: Math.max(column.liquidFraction, LIQUID_CANDLED) };
	if (cores.includes('wet'))
		return { ...column, liquidFraction: Math.max(column.liquidFraction, LIQUID_WET) };
	return cores.includes('sound') ? { ...column, liquidFraction: 0 } : column;
}

function lowerLimit_m(reading: Reading): number {
	const reached = reading.holes.map(holeTotal_m).filter((x): x is number => x !== null);
	return Math.max(0, ...reached) * (1 - HOLE_SPREAD);
}

function holeTotal_m(hole: Hole): number | null {
	if (hole.clear_m !== null && hole.white_m !== null) return hole.clear_m + hole.white_m;
	return hole.total_m;
}

function holeClear_m(hole: Hole): number | null {
	if (hole.clear_m !== null) return hole.clear_m;
	if (hole.total_m === null || hole.white_m === null) return null;
	return Math.max(0, hole.total_m - hole.white_m);
}

function holeWhite_m(hole: Hole): number | null {
	if (hole.white_m !== null) return hole.white_m;
	if (hole.total_m === null || hole.clear_m === null) return null;
	return Math.max(0, hole.total_m - hole.clear_m);
}

function mean(values: readonly (number | null)[]): number | null {
	const known = values.filter((value): value is number => value !== null);
	return known.length === 0 ? null : known.reduce((sum, value) => sum + value, 0) / known.length;
}
