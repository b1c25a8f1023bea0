import type { EstimatedDay } from '../ensemble/estimate.ts';
import type { Forecast } from '../forecast.ts';

/** Settled snow, where none is expected but some may lie. [Verseghy1991] [M-med] */
const SETTLED_kg_m3 = 300;

/**
 * Snow that weighs on the sheet of a day, at its heavier end: the depth that one spot in ten exceeds.
 *
 * Of the median's density. Slush floats by itself and weighs nothing on it.
 */
export function snowLoad_kg_m2({
	quantiles,
	column
}: Pick<EstimatedDay, 'quantiles' | 'column'>): number {
	const depth_m = quantiles.snow_m.p90 ?? column.snow_m;
	return depth_m * (column.snowDensity_kg_m3 > 0 ? column.snowDensity_kg_m3 : SETTLED_kg_m3);
}

/** The same by what an answer tells of its day, as settled snow. */
export function toldSnow_kg_m2({ asOf, days }: Pick<Forecast, 'asOf' | 'days'>): number {
	const snow_m = days.find(({ on }) => on === asOf)?.snow_m;
	return (snow_m?.p90 ?? snow_m?.p50 ?? 0) * SETTLED_kg_m3;
}
