import type { OriginOverview } from '#lib/server/services/sources/lake-origins.ts';
import { stateWords } from '../../../sources/state-words.ts';

type SourceOrigin = Extract<OriginOverview, { kind: 'source' }>;

/** An origin of a lake's weather as its page shows it. */
export function originItem(
	origin: OriginOverview,
	{ now, timeZone }: { now: Date; timeZone: string }
) {
	if (origin.kind === 'csv') return { kind: 'csv' as const, id: 'csv' };
	const { source, name, failing, progress, lastObservedAt, forecastIssuedAt } = origin;
	const isAsking = progress?.status === 'waiting' || progress?.status === 'asking';
	const state = stateWords(
		{
			isOn: origin.isOn,
			isUsed: true,
			isAsking: false,
			answeredAt: origin.answeredAt,
			forecastIssuedAt,
			failing,
			lacksKey: origin.lacksKey
		},
		now,
		timeZone
	);
	return {
		kind: 'source' as const,
		id: source,
		name,
		state,
		isAsking,
		isWaiting: progress?.status === 'waiting',
		days: progress && isAsking ? { done: progress.doneDays, wanted: progress.wantedDays } : null,
		/** What else the last asking had to say. */
		notes: notesOf(origin),
		lastObservedAge_h: lastObservedAt && age_h(lastObservedAt, now),
		hasPrecipitation: origin.hasPrecipitation,
		attribution: origin.attribution,
		attributionUrl: origin.attributionUrl,
		station: {
			asked: origin.station,
			name: origin.stationName,
			distance_m: origin.distance_m,
			elevation_m: origin.stationElevation_m,
			higherBy_m: origin.higherBy_m,
			corrects: origin.correctsElevation,
			possibleCorrection_K: origin.possibleCorrection_K
		}
	};
}

export type OriginItem = ReturnType<typeof originItem>;
export type SourceItem = Extract<OriginItem, { kind: 'source' }>;
export type StationItem = SourceItem['station'];

function notesOf({ progress, failing }: SourceOrigin): string[] {
	return (progress?.sentences ?? []).filter((text) => text !== failing?.text);
}

function age_h(at: Date, now: Date): number {
	return Math.max(0, (now.getTime() - at.getTime()) / 3_600_000);
}
