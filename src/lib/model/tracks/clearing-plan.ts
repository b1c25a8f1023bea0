import type { IsoDate } from '../calendar.ts';
import type { SiteIce } from '../site-ice.ts';

/** A clearing that somebody thinks of. Nothing of it counts as done. */
export interface ClearingPlan {
	/** The first clearing, at the start of its day. */
	from: IsoDate;
	/** What is left each time, from 0 on. */
	left_m: number;
	/** Cleared again each morning that finds more than this of new snow on it; `null`: never again. */
	afterSnow_m: number | null;
}

/** Whether a day may be one on which the plan acts. */
export function isPlanned(plan: ClearingPlan | undefined, on: IsoDate): plan is ClearingPlan {
	return plan !== undefined && (on === plan.from || (on > plan.from && plan.afterSnow_m !== null));
}

/**
 * Clears by plan what lies there at the start of a day: on the first day all of it but what is left, later
 * only where more has come to lie than is borne. Each possible winter is cleared by its own snow. Snow that
 * wind blows between the banks is not known to the model.
 */
export function clearByPlan(ice: SiteIce, plan: ClearingPlan, on: IsoDate): void {
	const borne_m = plan.left_m + (on === plan.from ? 0 : (plan.afterSnow_m ?? Infinity));
	if (ice.snow_m > borne_m) ice.snow_m = plan.left_m;
}
