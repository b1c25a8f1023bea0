import type { IsoDate } from './calendar.ts';
import type { Bounds } from './ensemble/bounds.ts';
import { isVehicle, type LoadCase } from './load-case.ts';
import type { SeasonDay } from './season.ts';

/** A day of a site as rules and texts need it. */
export interface SiteDay {
	/** The season's day with the ensemble's column; the water in its ice is the season's, as cores told. */
	day: SeasonDay;
	/** Days without a temperature since freeze-up or the last hole. */
	gapDays: number;
	/** Median effective thickness at a random spot. */
	effective_m: number;
	/** Median white ice there, which need not be the column's share of the median whole. */
	white_m: number;
	bound: Bounds;
	/** Mean and spread of the site's own effective thickness. */
	site: { mean_m: number; sd_m: number };
}

/** Whether the snow of every day was reported, by the last day that is known by `asOf`. */
export function isSnowKnown(known: readonly SiteDay[], asOf: IsoDate): boolean {
	return known.findLast(({ day }) => day.on <= asOf)?.day.snowKnown ?? false;
}

/** Lower bound of effective thickness that a load is judged by. */
export function bound_m({ bound }: SiteDay, load: LoadCase): number {
	return isVehicle(load) ? bound.fiveSpots_m : bound.spot_m;
}
