import { iceOutByNow } from '#lib/server/services/ice-out-by-now.ts';
import type { LakeView } from '#lib/server/services/lake-view.ts';
import type { SiteRecord } from '#lib/server/services/sites.ts';
import { knownDays } from '#lib/ui/charts/series.ts';
import { lastReading, pageLoad } from '../lake-page.ts';

/** A site at a glance. */
export function siteRow(site: SiteRecord, view: LakeView, sites: readonly SiteRecord[]) {
	const { asOf, today, winter, status, outlook, record } = view;
	const iceOutOn = iceOutByNow(view);
	const days = knownDays(outlook?.forecast.days.filter(({ on }) => on === asOf) ?? []);
	const answers = outlook?.forecast.loads ?? [];
	return {
		id: site.id,
		name: site.name,
		kind: site.kind,
		parentName: sites.find(({ id }) => id === site.parent)?.name ?? null,
		winter,
		asOf,
		today,
		status,
		iceOutOn,
		freezeUpOn: record.freezeUpOn,
		day: iceOutOn === null ? (days[0] ?? null) : null,
		loads: view.loads.flatMap((load) => {
			const answer = answers.find(({ id }) => id === load.id);
			if (!answer) return [];
			const { name, mark, status } = pageLoad(load, answer);
			return [{ id: load.id, name, mark, status }];
		}),
		lastReading: lastReading(view.readings, today)
	};
}

export type SiteRow = ReturnType<typeof siteRow>;
