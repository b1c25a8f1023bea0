import { daysBetween } from '#lib/model/calendar.ts';
import {
	answersTogether,
	callFor,
	type Span,
	type WeatherSource
} from '../../weather/source/contract.ts';

/** Days that are asked for at once although they are of both parts. */
export interface Together {
	/** What of them is history. */
	past: Span;
	whole: Span;
}

/** The last span of what is new and what is to come as one, where one call answers both. */
export function asOneSpan(
	source: WeatherSource,
	past: Span | undefined,
	ahead: Span | null
): Together | null {
	const call = callFor(source, 'history');
	if (!call || !past || !ahead || !answersTogether(source)) return null;
	if (past.to < ahead.from || daysBetween(past.from, ahead.to) + 1 > call.chunk_d) return null;
	return { past, whole: { from: past.from, to: ahead.to } };
}
