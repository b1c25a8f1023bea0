import type { LakeView } from '#lib/server/services/lake-view.ts';
import { knownDays } from '#lib/ui/charts/series.ts';

/** One lake at a glance. */
export function lakeCard({
	lake,
	winter,
	today,
	asOf,
	status,
	weather,
	readings,
	outlook,
	record
}: LakeView) {
	const days = knownDays(outlook?.forecast.days.filter(({ on }) => on === asOf) ?? []);
	const onFoot =
		outlook?.forecast.loads.find(({ id }) => id === 'on-foot') ?? outlook?.forecast.loads[0];
	const taken = readings.map(({ on }) => on).filter((on) => on <= asOf);
	return {
		id: lake.id,
		name: lake.name,
		isInvented: lake.isInvented,
		winter,
		today,
		asOf,
		status,
		iceOutOn: record.iceOutOn !== null && record.iceOutOn <= asOf ? record.iceOutOn : null,
		day: days[0] ?? null,
		growth_m_d: outlook?.growth_m_d ?? null,
		onFoot: onFoot
			? { name: onFoot.name, status: onFoot.status, required_m: onFoot.required_m }
			: null,
		weatherTo: weather.to,
		readingOn: taken.toSorted().at(-1) ?? null,
		caution: outlook?.forecast.cautions[0]?.text ?? null
	};
}

export type LakeCard = ReturnType<typeof lakeCard>;
