import { daysBetween, type IsoDate } from '#lib/model/calendar.ts';
import { shortDay, span } from '../format/day.ts';

/** A load's dates, as they are or would be. */
export interface Dates {
	expectedFrom: IsoDate | null;
	likelyFrom: IsoDate | null;
	until: IsoDate | null;
}

/** A difference of no more than this is within the scatter of so few members. */
const NOISE_d = 1;

/**
 * What a change from `asOf` on does to a load's days: the first of them that is still to come, and the last.
 *
 * @example 'expected 12 days sooner, ends 3 days later'
 */
export function shiftWords(asIs: Dates, other: Dates, asOf: IsoDate): string {
	const parts = [startWords(asIs, other, asOf), moved('ends', asIs.until, other.until)].filter(
		(part) => part !== null
	);
	return parts.length === 0 ? 'the same' : parts.join(', ');
}

function startWords(asIs: Dates, other: Dates, asOf: IsoDate): string | null {
	const isAhead = asIs.expectedFrom === null || asIs.expectedFrom > asOf;
	if (isAhead) return appeared('expected', asIs.expectedFrom, other.expectedFrom);
	const isLikely = asIs.likelyFrom !== null && asIs.likelyFrom <= asOf;
	return isLikely ? null : appeared('likely', asIs.likelyFrom, other.likelyFrom);
}

function appeared(what: string, before: IsoDate | null, after: IsoDate | null): string | null {
	if (before === null) return after === null ? null : `${what} from ${shortDay(after)}`;
	return after === null ? `no longer ${what}` : moved(what, before, after);
}

function moved(what: string, before: IsoDate | null, after: IsoDate | null): string | null {
	if (before === null || after === null) return null;
	const days = daysBetween(before, after);
	return Math.abs(days) <= NOISE_d
		? null
		: `${what} ${span(Math.abs(days))} ${days < 0 ? 'sooner' : 'later'}`;
}
