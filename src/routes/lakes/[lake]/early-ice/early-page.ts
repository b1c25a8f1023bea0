import { brokeLately } from '#lib/model/broke-lately.ts';
import { isFirstLoad } from '#lib/model/early/first-loads.ts';
import type { ForecastLoad } from '#lib/model/forecast.ts';
import type { EarlyIceView } from '#lib/server/services/early-ice.ts';
import { iceOutByNow } from '#lib/server/services/ice-out-by-now.ts';
import { knownDays } from '#lib/ui/charts/series.ts';
import { upkeepOf } from '../upkeep.ts';

/** Days of chances that the page tells. */
const CHANCES_d = 21;

/** What the page shows, without the long lists that only the API gives. */
export function earlyPage({ view, early }: EarlyIceView) {
	const { lake, site, winter, winters, today, asOf, record, outlook } = view;
	const { freezing } = early;
	const loads = outlook?.forecast.loads ?? [];
	return {
		lake: { id: lake.id, name: lake.name, isInvented: lake.isInvented, water: lake.water },
		site,
		winter,
		winters: winters.includes(winter) ? winters : [winter, ...winters],
		today,
		asOf,
		freezeUpOn: record.freezeUpOn,
		broke: brokeLately(view.readings, view.isPresent ? today : asOf),
		iceOutOn: iceOutByNow(view),
		early: {
			...early,
			freezing: freezing && { ...freezing, chances: freezing.chances.slice(0, CHANCES_d + 1) }
		},
		day: knownDays(outlook?.forecast.days.filter(({ on }) => on === asOf) ?? [])[0] ?? null,
		isWithheld: loads.some(({ status }) => status === 'withheld'),
		areFirstMet: loads.filter((load) => isFirstLoad(load, view.loads)).every(isMet),
		cautions: outlook?.forecast.cautions ?? [],
		climate: outlook?.climate ?? freezing?.climate ?? null,
		upkeep: upkeepOf(view)
	};
}

function isMet({ status }: ForecastLoad): boolean {
	return status === 'reached' || status === 'expectedNotDrilled';
}
