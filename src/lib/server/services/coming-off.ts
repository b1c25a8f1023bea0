import type { IsoDate } from '#lib/model/calendar.ts';
import type { Leaving } from '#lib/model/leaving/leaving.ts';
import { offBy, usualLead_d, type OffBy } from '#lib/model/leaving/off-by.ts';
import type { LoadCase } from '#lib/model/load-case.ts';
import type { Context } from '../context.ts';
import type { RemovalRecord } from '../storage/removal.ts';
import type { LakeView } from './lake-view.ts';
import { getRemoval } from './removal.ts';

type LeavingLoad = Leaving['loads'][number] & { offBy: OffBy };

/** What late winter does to the ice, with the days by which loads have to be off. */
export interface ComingOff extends Omit<Leaving, 'loads'> {
	/** The local removal date, as typed; it comes before anything that is estimated. */
	removalOn: IsoDate | null;
	loads: LeavingLoad[];
}

/** `null` where nothing is estimated of the day, or the ice is gone. */
export async function comingOff(
	ctx: Context,
	{ lake, winter, outlook, loads, asOf, isPresent, today }: LakeView
): Promise<ComingOff | null> {
	const leaving = outlook?.forecast.leaving ?? null;
	if (leaving === null) return null;
	const removal = await getRemoval(ctx, lake.id, winter);
	const now = isPresent && today > asOf ? today : asOf;
	return {
		...leaving,
		removalOn: removal.removalOn,
		loads: leaving.loads.map((days) => ({
			...days,
			offBy: offBy({
				days,
				spellFrom: leaving.spellFrom,
				removalOn: removal.removalOn,
				asOf: now,
				lead_d: leadOf(days.id, loads, removal)
			})
		}))
	};
}

/** As typed, else the usual. */
function leadOf(id: string, loads: readonly LoadCase[], { leads }: RemovalRecord): number {
	const load = loads.find((each) => each.id === id);
	return leads.find((each) => each.load === id)?.lead_d ?? (load ? usualLead_d(load) : 0);
}
