import { total_m } from '#lib/model/column.ts';
import type { Fitted, Parameters } from '#lib/model/parameters.ts';
import { FITTED, parametersFor } from '#lib/model/parameters.ts';
import { runSeason } from '#lib/model/season.ts';
import type { Coordinate, Point } from './coordinate-search.ts';
import { coordinateSearch, middle } from './coordinate-search.ts';
import type { LakeWinter } from './lake-winter.ts';
import type { ParametersOf } from './modes.ts';
import { mean } from './scores.ts';
import { UnreadableFolder } from './tidy-table.ts';

/** The parameters that are fitted anew, each within a range that is plausible before any fit. */
export const REFITTED = [
	{ name: 'exchangeSheltered_W_m2K', low: 10, high: 20 },
	{ name: 'exchangeExposed_W_m2K', low: 15, high: 30 },
	{ name: 'keptSheltered', low: 0.6, high: 1.2 },
	{ name: 'keptExposed', low: 0.4, high: 1.2 },
	{ name: 'snowConductivityRatio', low: 1.6, high: 2.5 },
	{ name: 'settledSnow_kg_m3', low: 200, high: 350 },
	{ name: 'wetting_kg_m2degCd', low: 2, high: 7 },
	{ name: 'snowMelt_kg_m2degCd', low: 2, high: 6 },
	{ name: 'slushMatrix_kg_m3', low: 300, high: 550 },
	{ name: 'snowSpreadFraction', low: 0.02, high: 0.6 }
] as const satisfies (Coordinate & { name: keyof Fitted })[];

/** Cost in cm² of a parameter at the edge of its range: keeps one that the readings don't tell. */
const EDGE_COST_cm2 = 2;

/** White ice is measured at few lakes and scatters more than the whole. */
const WHITE_WEIGHT = 0.2;

/**
 * Parameters for each lake, fitted to the growth readings of all the other lakes of the folder.
 * The search starts in the middle of the ranges: starting at the shipped values would let the lake
 * that is left out look in.
 * @throws UnreadableFolder when there is no other lake
 */
export function refitted(winters: readonly LakeWinter[]): ParametersOf {
	if (new Set(winters.map(({ lakeKey }) => lakeKey)).size < 2)
		throw new UnreadableFolder('--refit needs scored readings of two lakes or more; leave it out');
	const byLake = new Map<string, Parameters>();
	for (const { lakeKey, lake } of winters) {
		if (byLake.has(lakeKey)) continue;
		const others = winters.filter((winter) => winter.lakeKey !== lakeKey);
		byLake.set(lakeKey, parametersFor(lake, asFitted(fit(others))));
	}
	return ({ lakeKey }) => byLake.get(lakeKey);
}

function fit(winters: readonly LakeWinter[]): Point {
	return coordinateSearch(
		REFITTED,
		(point) => meanSquare_cm2(winters, point) + edgeCost_cm2(point)
	);
}

function asFitted(point: Point): Fitted {
	return { ...FITTED, ...point };
}

function meanSquare_cm2(winters: readonly LakeWinter[], point: Point): number {
	const squares_cm2 = winters.flatMap((winter) => growthSquares_cm2(winter, asFitted(point)));
	return mean(squares_cm2) ?? 0;
}

/** Squared errors of the thickness, and at their weight those of white ice where it was measured. */
function growthSquares_cm2(winter: LakeWinter, fitted: Fitted): number[] {
	const growth = winter.readings.filter(({ phase }) => phase === 'growth');
	const last = growth.at(-1);
	if (!last) return [];
	const days = runSeason({
		lake: winter.lake,
		freezeUpOn: winter.freezeUpOn,
		until: last.on,
		weather: winter.weather,
		parameters: parametersFor(winter.lake, fitted)
	});
	const columns = new Map(days.map((day) => [day.on, day.column]));
	return growth.flatMap((reading) => {
		const column = columns.get(reading.on);
		if (!column) return [];
		const total_cm = (total_m(column) - reading.total_m) * 100;
		const white_cm = (column.white_m - (reading.white_m ?? column.white_m)) * 100;
		return [total_cm ** 2 + WHITE_WEIGHT * white_cm ** 2];
	});
}

function edgeCost_cm2(point: Point): number {
	const start = middle(REFITTED);
	return REFITTED.reduce((sum, { name, low, high }) => {
		const away = ((point[name] ?? 0) - (start[name] ?? 0)) / ((high - low) / 2);
		return sum + EDGE_COST_cm2 * away ** 2;
	}, 0);
}
