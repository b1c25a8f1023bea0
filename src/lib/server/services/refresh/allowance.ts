import type { SourceState } from '../../storage/source-states.ts';
import {
	answersTogether,
	callFor,
	type SourcePart,
	type WeatherSource
} from '../../weather/source/contract.ts';

/** Between two refreshes of a lake: forecasts are issued a few times a day. Our choice. */
const USUAL_INTERVAL_MIN = 180;
/** The rest of a day's calls is for people who ask, and for the winter so far. Our choice. */
const SHARE_FOR_SCHEDULE = 0.8;
const MINUTES_A_DAY = 1440;
const FIRST_BACK_OFF_MIN = 5;
const LONGEST_BACK_OFF_MIN = 360;
/** A part more than it takes, so that not all is asked at once again. Our choice. */
const SPREAD = 0.2;
/** Nothing is put off for longer: what is due later was put off by a clock that was ahead. */
export const LONGEST_WAIT_MIN = 1440;

/** A call that the network loses is made once more, and counts. */
const TRIES = 2;

/** Calls that asking for a part once makes, redirects apart. */
export function callsFor(source: WeatherSource, part: SourcePart): number {
	const call = callFor(source, part);
	return call ? 1 + (call.first?.length ?? 0) : 0;
}

/** Calls that a refresh of a lake makes: a call that answers both parts is made once. */
function callsForBoth(source: WeatherSource): number {
	const history = callsFor(source, 'history');
	return answersTogether(source) ? history : history + callsFor(source, 'forecast');
}

/** Minutes between two refreshes of a lake, so that all lakes together keep to the daily limit. */
export function interval_min(source: WeatherSource, lakes: number): number {
	const { perDay, minInterval_min } = source.limits;
	const calls = lakes * callsForBoth(source);
	const spread_min = (calls * MINUTES_A_DAY) / (SHARE_FOR_SCHEDULE * perDay);
	return Math.max(USUAL_INTERVAL_MIN, minInterval_min, spread_min);
}

/** Calls that keeping so many lakes up to date needs until the daily limit begins anew. */
export function callsLeftForToday(source: WeatherSource, lakes: number, now: Date): number {
	const left_min = MINUTES_A_DAY - Math.floor((now.getTime() / 60_000) % MINUTES_A_DAY);
	const rounds = Math.ceil(left_min / interval_min(source, lakes));
	return rounds * lakes * callsForBoth(source);
}

/** The same spread out, by a random number from 0 to 1. */
export function spreadBackOff_min(failures: number, random: number): number {
	return backOff_min(failures) * (1 + SPREAD * random);
}

/** Minutes to leave alone what has failed so often in a row: 5, 10, 20 and so on to six hours. */
export function backOff_min(failures: number): number {
	return Math.min(LONGEST_BACK_OFF_MIN, FIRST_BACK_OFF_MIN * 2 ** Math.max(0, failures - 1));
}

/** Why a source may not be asked now. */
export interface Refusal {
	/** A limit, a wait or a back-off; or nothing is wrong and the last answer still holds. */
	kind: 'waits' | 'holds';
	until: Date;
	/** A sentence for the log. */
	text: string;
}

/**
 * Whether so many calls may be made now; `null` when they may. A person who asks overrides our own
 * back-off, and never what the service asked for or its daily limit.
 */
export function refusalFor(
	source: WeatherSource,
	state: SourceState,
	calls: number,
	{ now, isOnDemand, reserve = 0 }: { now: Date; isOnDemand: boolean; reserve?: number }
): Refusal | null {
	const retryAfter = asFuture(state.retry_after_at, now);
	if (retryAfter) {
		const text = `${source.name} asked to be left alone until ${clock(retryAfter)}; it is asked again then.`;
		return { kind: 'waits', until: retryAfter, text };
	}
	const longest_min = LONGEST_BACK_OFF_MIN * (1 + SPREAD);
	const backOff = asFuture(state.back_off_until_at, now, longest_min);
	if (backOff && !isOnDemand) {
		const text = `${source.name} failed ${state.failures} times in a row and is left alone until ${clock(backOff)}; refresh by hand to try at once.`;
		return { kind: 'waits', until: backOff, text };
	}
	const { perDay } = source.limits;
	const used = state.calls_on === now.toISOString().slice(0, 10) ? state.calls : 0;
	if (used + reserve + TRIES * calls <= perDay) return null;
	const until = new Date(Math.floor(now.getTime() / 86_400_000 + 1) * 86_400_000);
	const kept = reserve > 0 ? `, ${reserve} are kept for the weather of today` : '';
	const text = `${source.name} allows ${perDay} calls a day and ${used} are used${kept}; it is asked again after ${clock(until)}.`;
	return { kind: 'waits', until, text };
}

/** Within so many minutes, where it cannot be later. */
function asFuture(at: string | null, now: Date, within_min = Infinity): Date | null {
	const ahead_min = at === null ? 0 : (Date.parse(at) - now.getTime()) / 60_000;
	return at !== null && ahead_min > 0 && ahead_min <= within_min ? new Date(at) : null;
}

/** @example clock(new Date('2027-02-10T13:05:00Z')) // => '2027-02-10 13:05 UTC' */
export function clock(at: Date): string {
	return `${at.toISOString().slice(0, 16).replace('T', ' ')} UTC`;
}
