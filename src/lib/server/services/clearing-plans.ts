import type { IsoDate } from '#lib/model/calendar.ts';
import type { Forecast } from '#lib/model/forecast.ts';
import type { Outlook } from '#lib/model/outlook.ts';
import type { Clearing } from '#lib/model/tracks/bank-load.ts';
import type { ClearingPlan } from '#lib/model/tracks/clearing-plan.ts';
import type { Words } from '#lib/model/words.ts';
import type { Context } from '../context.ts';
import { lakeView, outlookInput } from './lake-view.ts';
import { outlookOf } from './outlooks.ts';

/** A site as it is and as a clearing would make it. Nothing of it is stored. */
export interface PlannedClearing {
	asIs: Forecast;
	cleared: Forecast;
	/** What the first clearing moves; `null` where its day is not estimated. */
	clearing: Clearing | null;
}

/** Settled snow, 200 to 300 [M-hi]: where none lies yet that tells its own density. */
const SETTLED_kg_m3 = 250;

/** Runs a site's winter twice, without the plan and with it. `null` where nothing is estimated. */
export async function planClearing(
	ctx: Context,
	lakeId: string,
	{ site, words }: { site: string; words: Words },
	plan: ClearingPlan,
	width_m: number
): Promise<PlannedClearing | null> {
	const options = { site, words, toWinterEnd: true };
	const { outlook } = await lakeView(ctx, lakeId, options);
	if (outlook === null) return null;
	const input = await outlookInput(ctx, lakeId, options);
	const cleared = await outlookOf({ ...input, plan });
	if (cleared === null) return null;
	return {
		asIs: outlook.forecast,
		cleared: cleared.forecast,
		clearing: clearingOn(outlook, plan, width_m)
	};
}

/** By the lower bound of the ice, so that its buoyancy is not overrated. */
function clearingOn(
	{ forecast, today }: Outlook,
	{ from, left_m }: ClearingPlan,
	width_m: number
): Clearing | null {
	const day = dayOf(forecast, from);
	if (!day || day.bound === null || day.total_m.p50 === null) return null;
	const share = day.total_m.p50 > 0 ? Math.min(1, day.bound.total_m / day.total_m.p50) : 0;
	const column = today?.column;
	const density_kg_m3 = column && column.snow_m > 0 ? column.snowDensity_kg_m3 : SETTLED_kg_m3;
	const snow_m = day.snow_m.p50 ?? 0;
	return {
		clear_m: (day.clear_m.p50 ?? 0) * share,
		white_m: (day.white_m.p50 ?? 0) * share,
		snow_kg_m2: snow_m * density_kg_m3,
		cleared_kg_m2: Math.max(0, snow_m - left_m) * density_kg_m3,
		width_m
	};
}

function dayOf({ days }: Forecast, on: IsoDate) {
	return days.find((day) => day.on === on);
}
