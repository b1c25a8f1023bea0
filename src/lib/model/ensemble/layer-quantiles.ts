import type { Quantiles } from '../forecast.ts';
import { quantileOfSorted, ranksOf } from './quantiles.ts';
import type { Sorter } from './sorted.ts';
import type { Holes } from './spots.ts';

/** Layers whose quantiles are told, as {@link Holes} names them. */
export type LayerName = Exclude<keyof Holes, 'thinnest_m'>;

/**
 * What one hole at a random spot would show of each layer, a member a value: effective thickness in
 * order, the other layers where their quantiles look.
 */
export type SortedLayers = Record<LayerName, Float64Array>;

const SHARES = [0.05, 0.1, 0.5, 0.9, 0.95];

export function sortLayers(holes: Holes, sort: Sorter): SortedLayers {
	const ranks = ranksOf(SHARES, holes.total_m.length);
	const part = (layer: Float64Array) => sort.around(layer, ranks);
	return {
		clear_m: part(holes.clear_m),
		white_m: part(holes.white_m),
		snow_m: part(holes.snow_m),
		slush_m: part(holes.slush_m),
		total_m: part(holes.total_m),
		effective_m: sort(holes.effective_m)
	};
}

export function quantilesOfLayers(sorted: SortedLayers): Record<LayerName, Quantiles> {
	const of = (values: Float64Array): Quantiles => ({
		p05: quantileOfSorted(values, 0.05),
		p10: quantileOfSorted(values, 0.1),
		p50: quantileOfSorted(values, 0.5),
		p90: quantileOfSorted(values, 0.9),
		p95: quantileOfSorted(values, 0.95)
	});
	return {
		clear_m: of(sorted.clear_m),
		white_m: of(sorted.white_m),
		snow_m: of(sorted.snow_m),
		slush_m: of(sorted.slush_m),
		total_m: of(sorted.total_m),
		effective_m: of(sorted.effective_m)
	};
}

/** What a hole at a random spot falls short of in one case of ten; zero where there is no member. */
export function lowerBound(sorted: Float64Array): number {
	return quantileOfSorted(sorted, 0.1) ?? 0;
}

export function median(sorted: Float64Array): number {
	return quantileOfSorted(sorted, 0.5) ?? 0;
}
