import type { IsoDate } from './calendar.ts';
import { OPEN_WATER } from './column.ts';
import type { EstimatedDay } from './ensemble/estimate.ts';
import type { SeasonDay } from './season.ts';
import type { SinceAnchor } from './since-anchor.ts';
import type { SiteDay } from './site-day.ts';

/** The ensemble's days with what is on record: ice-out ends them. */
export function recordedDays(
	estimated: readonly EstimatedDay[],
	iceOutOn: IsoDate | null
): Map<IsoDate, EstimatedDay> {
	return new Map(estimated.map((day) => [day.on, openFrom(iceOutOn, day)]));
}

/** The season's days with the ensemble's columns and bounds. */
export function knownDays(
	days: readonly SeasonDay[],
	accounts: readonly SinceAnchor[],
	estimated: ReadonlyMap<IsoDate, EstimatedDay>
): SiteDay[] {
	return days.flatMap((day, index) => {
		const [own, since] = [estimated.get(day.on), accounts[index]];
		return own && since ? [siteDay(day, own, since)] : [];
	});
}

function siteDay(day: SeasonDay, estimated: EstimatedDay, { gapDays }: SinceAnchor): SiteDay {
	const { liquidFraction } = day.column;
	const { quantiles, column, bound, site } = estimated;
	return {
		day: { ...day, column: { ...column, liquidFraction } },
		gapDays,
		effective_m: quantiles.effective_m.p50 ?? 0,
		white_m: quantiles.white_m.p50 ?? 0,
		bound,
		site
	};
}

/** From a recorded ice-out on there is no ice, whatever is estimated. */
function openFrom(iceOutOn: IsoDate | null, day: EstimatedDay): EstimatedDay {
	if (iceOutOn === null || day.on < iceOutOn) return day;
	const none = { p05: 0, p10: 0, p50: 0, p90: 0, p95: 0 };
	return {
		...day,
		quantiles: {
			clear_m: none,
			white_m: none,
			snow_m: none,
			slush_m: none,
			total_m: none,
			effective_m: none
		},
		spot_m: new Float64Array(day.spot_m.length),
		fiveSpots_m: new Float64Array(day.fiveSpots_m.length),
		bound: { spot_m: 0, fiveSpots_m: 0, total_m: 0 },
		column: OPEN_WATER,
		site: { mean_m: 0, sd_m: 0 }
	};
}
