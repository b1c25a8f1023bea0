import type { SourceOverview } from '#lib/server/services/sources/overview.ts';
import type { WeatherSource } from '#lib/server/services/sources/mapping.ts';
import { callWords, stateWords } from './state-words.ts';

/** A source as the list shows it. */
export function cardOf(overview: SourceOverview, now: Date) {
	const { id, name, source, lakes, isOn, callsToday } = overview;
	return {
		id,
		name,
		lakes,
		isOn,
		canExport: source !== null,
		state: stateWords(
			{
				...overview,
				lacksKey: source?.needsKey === true && !overview.hasKey,
				isUsed: lakes.length > 0,
				answeredAt: overview.lastSuccessAt
			},
			now
		),
		calls: callWords(callsToday, source?.limits.perDay ?? null),
		terms: source ? termsOf(source) : null
	};
}

export type SourceCard = ReturnType<typeof cardOf>;

export function readyMadeOf(source: WeatherSource, contact: string | null) {
	return {
		id: source.id,
		name: source.name,
		homepage: source.homepage,
		parts: partWords(source),
		needsKey: source.needsKey,
		/** What the operator has to set before it answers. */
		lacksContact: source.wantsContact && contact === null,
		terms: termsOf(source)
	};
}

export type ReadyMade = ReturnType<typeof readyMadeOf>;

function termsOf({ terms, limits }: WeatherSource) {
	const { attribution, attributionUrl = null, licence = null, note } = terms;
	return { attribution, attributionUrl, licence, note, perDay: limits.perDay };
}

export type Terms = ReturnType<typeof termsOf>;

/** @example partWords(source) // => 'Past days and forecast, by the hour' */
export function partWords({ calls }: WeatherSource): string {
	const parts = new Set(calls.flatMap(({ part }) => (part === 'both' ? PARTS : [part])));
	const what =
		parts.size > 1 ? 'Past days and forecast' : parts.has('history') ? 'Past days' : 'Forecast';
	const steps = new Set(calls.map(({ mapping }) => mapping.step));
	return `${what}, ${steps.has('hourly') ? 'by the hour' : 'by the day'}`;
}

const PARTS = ['history', 'forecast'] as const;
