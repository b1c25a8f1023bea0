import type { IsoDate } from '../calendar.ts';
import { LIKELY } from '../ensemble/dates.ts';
import type { Forecast, ForecastLoad } from '../forecast.ts';

/**
 * Where a site stands in its early season: not frozen over on record, growing to the first loads, past
 * it, or without weather that tells.
 */
export type EarlyPhase = 'beforeFreezeUp' | 'growing' | 'past' | 'unknown';

/** Why the early season is over. */
export type PastBecause = 'iceOut' | 'firstLoadsLikely' | 'noMoreGrowth';

/**
 * Why a frozen site is past its early season on the day of asking; `null` while it is not.
 *
 * It is when every first load has its chart minimum with a chance of 0.9, or when the estimate is not
 * expected to become any thicker. Our rule. `iceOutOn` is what is known by now.
 */
export function pastBecause(
	{ days, asOf }: Pick<Forecast, 'days' | 'asOf'>,
	firstLoads: readonly Pick<ForecastLoad, 'days'>[],
	iceOutOn: IsoDate | null
): PastBecause | null {
	if (iceOutOn !== null) return 'iceOut';
	const isLikely = (load: Pick<ForecastLoad, 'days'>): boolean =>
		(load.days.find(({ on }) => on === asOf)?.pThickness ?? 0) >= LIKELY;
	if (firstLoads.length > 0 && firstLoads.every(isLikely)) return 'firstLoadsLikely';
	const now_m = days.find(({ on }) => on === asOf)?.total_m.p50 ?? null;
	const coming = days.filter(({ on, total_m }) => on > asOf && total_m.p50 !== null);
	if (now_m === null || coming.length === 0) return null;
	const grows = coming.some(({ total_m }) => (total_m.p50 ?? 0) > now_m);
	return grows ? null : 'noMoreGrowth';
}
