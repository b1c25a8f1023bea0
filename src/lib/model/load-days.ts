import type { IsoDate } from './calendar.ts';
import type { EstimatedDay } from './ensemble/estimate.ts';
import { shareAtLeast } from './ensemble/quantiles.ts';
import { isVehicle, type LoadCase } from './load-case.ts';
import type { ForecastLoad } from './forecast.ts';
import type { SiteEstimate } from './site-estimate.ts';

/**
 * How likely a load's requirement is met on each day, and how likely a warm-spell rule is in force.
 *
 * The share of members whose effective thickness at a random spot, for vehicles at the thinnest of
 * five, is what the load asks without the day's warm spell and cold snap: `base_m`, which for what stands
 * on the ice goes by the day's snow. `null` where only an engineer can say, and on days that are not
 * estimated.
 */
export function loadDays(
	load: LoadCase,
	base_m: (day: EstimatedDay) => number | null,
	dates: readonly IsoDate[],
	{ days }: Pick<SiteEstimate, 'days'>,
	pThaw: ReadonlyMap<IsoDate, number>
): ForecastLoad['days'] {
	return dates.map((on) => {
		const day = days.get(on);
		const thickness_m = isVehicle(load) ? day?.fiveSpots_m : day?.spot_m;
		const asked_m = day === undefined ? null : base_m(day);
		const isAsked = asked_m !== null && thickness_m !== undefined;
		return {
			on,
			pThickness: isAsked ? shareAtLeast(thickness_m, asked_m) : null,
			pThaw: day === undefined ? null : (pThaw.get(on) ?? null)
		};
	});
}
