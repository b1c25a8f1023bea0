import type { LakeView } from '#lib/server/services/lake-view.ts';
import { knownDays } from '#lib/ui/charts/series.ts';
import { forecastWords, observedWords } from './lakes/[lake]/upkeep-words.ts';

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
	record,
	upkeep
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
		/** Of what sources told: ages, whose it is, and what is wrong with it in short. */
		upkeep:
			upkeep.attributions.length > 0 || upkeep.sentences.length > 0 ? upkeepWords(upkeep) : null,
		caution: outlook?.forecast.cautions[0]?.text ?? null
	};
}

const IN_SHORT: Readonly<Record<string, string>> = {
	sourceFails: 'A weather source fails.',
	elevationUnknown: 'Its elevation is not entered, and its weather is another height’s.',
	noPrecipitation: 'Its snow is not known.'
};

function upkeepWords(upkeep: LakeView['upkeep']) {
	const forecast = forecastWords(upkeep);
	return {
		ages: `Observed ${observedWords(upkeep)}. ${forecast ? `Forecast ${forecast}.` : 'No forecast.'}`,
		faults: upkeep.sentences.flatMap(({ code }) => IN_SHORT[code] ?? []),
		attributions: upkeep.attributions.map(({ text }) => text)
	};
}

export type LakeCard = ReturnType<typeof lakeCard>;
