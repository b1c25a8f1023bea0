import type { ComingOff } from '#lib/server/services/coming-off.ts';
import { iceOutByNow } from '#lib/server/services/ice-out-by-now.ts';
import type { LakeView } from '#lib/server/services/lake-view.ts';
import type { RemovalRecord } from '#lib/server/services/removal.ts';
import { offBy } from '#lib/model/leaving/off-by.ts';
import type { LeavingLoad } from '#lib/ui/leaving/told.ts';
import { upkeepOf } from '../upkeep.ts';

/** What the page shows, without the long lists that only the API gives. */
export function comingOffPage(view: LakeView, told: ComingOff | null, removal: RemovalRecord) {
	const { lake, site, winter, winters, today, asOf, record, outlook, isPresent, status } = view;
	const now = isPresent && today > asOf ? today : asOf;
	return {
		lake: { id: lake.id, name: lake.name, isInvented: lake.isInvented },
		site,
		winter,
		winters: winters.includes(winter) ? winters : [winter, ...winters],
		today,
		asOf,
		now,
		status,
		freezeUpOn: record.freezeUpOn,
		iceOutOn: iceOutByNow(view),
		removalOn: removal.removalOn,
		leads: view.loads
			.filter(({ id }) => view.shown.includes(id))
			.map(({ id, name }) => ({
				id,
				name,
				lead_d: removal.leads.find(({ load }) => load === id)?.lead_d ?? null
			})),
		leaving: told && { ...told, loads: loadsOf(view, told, removal, now) },
		iceOut: outlook?.forecast.iceOut ?? null,
		cautions: outlook?.forecast.cautions ?? [],
		upkeep: upkeepOf(view)
	};
}

export type ComingOffPage = ReturnType<typeof comingOffPage>;

function loadsOf(
	{ outlook, shown }: LakeView,
	told: ComingOff,
	{ leads }: RemovalRecord,
	now: string
): LeavingLoad[] {
	return told.loads
		.filter(({ id }) => shown.includes(id))
		.flatMap((days) => {
			const answer = outlook?.forecast.loads.find(({ id }) => id === days.id);
			if (!answer) return [];
			const { lead_d } = days.offBy;
			return {
				...days,
				name: answer.name,
				required_m: answer.required_m,
				isDoubled: answer.rules.some(({ code }) => code === 'warmSpell'),
				wasExpected: answer.expectedFrom !== null && answer.expectedFrom <= now,
				byIce: offBy({ days, spellFrom: told.spellFrom, removalOn: null, asOf: now, lead_d }),
				isLeadTyped: leads.some(({ load }) => load === days.id)
			};
		});
}
