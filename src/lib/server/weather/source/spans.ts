import { addDays, type IsoDate } from '#lib/model/calendar.ts';
import type { SourcePart } from './contract.ts';
import type { WeatherSource } from './schema.ts';

export interface Span {
	from: IsoDate;
	to: IsoDate;
}

/**
 * The calls that a span of days needs of a source, one after the other, cut to what it reaches and
 * to the longest that it answers at once: ask span by span to show progress and keep a pace.
 */
export function spansOf(
	source: WeatherSource,
	part: SourcePart,
	asked: Span,
	today: IsoDate
): Span[] {
	const call = callFor(source, part);
	if (!call) return [];
	const { back_d, ahead_d } = call.reach;
	const first = back_d === undefined ? asked.from : later(asked.from, addDays(today, -back_d));
	const last = ahead_d === undefined ? asked.to : earlier(asked.to, addDays(today, ahead_d));
	const spans: Span[] = [];
	for (let from = first; from <= last; from = addDays(from, call.chunk_d)) {
		spans.push({ from, to: earlier(last, addDays(from, call.chunk_d - 1)) });
	}
	return spans;
}

/** The call that answers a part, or `undefined` where the source has none. */
export function callFor({ calls }: WeatherSource, part: SourcePart) {
	return calls.find((call) => call.part === part) ?? calls.find((call) => call.part === 'both');
}

/** Whether one and the same call answers history and forecast. */
export function answersTogether(source: WeatherSource): boolean {
	const history = callFor(source, 'history');
	return history !== undefined && history === callFor(source, 'forecast');
}

function later(a: IsoDate, b: IsoDate): IsoDate {
	return a > b ? a : b;
}

function earlier(a: IsoDate, b: IsoDate): IsoDate {
	return a < b ? a : b;
}
