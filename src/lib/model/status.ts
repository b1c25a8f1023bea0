import type { IsoDate } from './calendar.ts';
import type { DrilledDay } from './drilled-day.ts';
import type { LoadStatus } from './forecast.ts';
import { holesToShow_m } from './hole-to-show.ts';
import { ROTTEN, rottenText } from './rotten.ts';
import { isVehicle, type LoadCase } from './load-case.ts';
import { holesFor, supportOf, type Support } from './reached.ts';
import type { Requirement } from './requirement.ts';
import { bound_m, type SiteDay } from './site-day.ts';
import { shortSpellText } from './spell-text.ts';
import type { WarmDay } from './warm-day.ts';
import type { Words } from './words.ts';

export interface StatusInput {
	load: LoadCase;
	requirement: Requirement;
	/** The season up to the day asked for; its last day is that day, or none is known of it. */
	season: readonly SiteDay[];
	asOf: IsoDate;
	warm: WarmDay | null;
	drilled: readonly DrilledDay[];
	/** Recorded, and not after the day asked for. */
	iceOutOn: IsoDate | null;
	words: Words;
}

export interface Status {
	status: LoadStatus;
	reason: string;
}

/**
 * Where a load stands on a day, and why in words.
 *
 * Compares the lower bound of effective thickness, for vehicles that of the thinnest of five spots,
 * with what is asked for. A warm spell, a bad core or rotten ice withholds; without known snow nothing
 * is reached or expected; reached needs holes that support it.
 */
export function statusOf(input: StatusInput): Status {
	const { requirement, iceOutOn, warm, words } = input;
	if (requirement.required_m === null)
		return {
			status: 'askAnEngineer',
			reason: requirement.rules.map((rule) => rule.text).join(' ')
		};
	if (iceOutOn !== null)
		return { status: 'withheld', reason: `Ice-out was recorded on ${words.day(iceOutOn)}.` };
	const today = input.season.at(-1);
	if (today?.day.on !== input.asOf) return { status: 'notYet', reason: nothingKnown(today, input) };
	if (warm?.state === 'withheld')
		return {
			status: 'withheld',
			reason: `${shortSpellText(warm, words)} ${figures(today, requirement.required_m, input)}`
		};
	if (today.effective_m === 0)
		return {
			status: 'notYet',
			reason: `No ice is estimated; ${words.requirement(requirement.required_m)} is asked for.`
		};
	if (today.day.column.liquidFraction >= ROTTEN)
		return {
			status: 'withheld',
			reason: `Stay off: ${rottenText(today.day.column)} ${figures(today, requirement.required_m, input)} A core logged as sound would lift this.`
		};
	return judged(today, requirement.required_m, input);
}

function judged(today: SiteDay, required_m: number, input: StatusInput): Status {
	const { load, words } = input;
	const numbers = figures(today, required_m, input);
	const support = supportOf(load, required_m, bound_m(today, load), input.drilled, words);
	if (bound_m(today, load) < required_m)
		return { status: 'notYet', reason: `${numbers} ${toShow(today, required_m, input)}` };
	if (!today.day.snowKnown)
		return {
			status: 'notYet',
			reason: `${numbers} But the snow on the ice is not known, so nothing counts as expected or reached: measure it at a hole, or bring in weather with precipitation.`
		};
	if (support.isSupported)
		return { status: 'reached', reason: reachedText(support, required_m, words) };
	const since = words.day(clearsSince(required_m, input));
	return {
		status: 'expectedNotDrilled',
		reason: `Expected since ${since}, not drilled: ${support.lacks}. ${numbers} ${toShow(today, required_m, input)}`
	};
}

/** First day of the run up to today on which the bound clears the requirement. */
function clearsSince(required_m: number, { season, load, asOf }: StatusInput): IsoDate {
	const lastShort = season.findLastIndex((each) => bound_m(each, load) < required_m);
	return season[lastShort + 1]?.day.on ?? asOf;
}

function nothingKnown(last: SiteDay | undefined, { asOf, words }: StatusInput): string {
	return last === undefined
		? 'There is no weather since freeze-up, so nothing is estimated.'
		: `The weather ends before ${words.day(last.day.on)}: nothing is estimated for ${words.day(asOf)}.`;
}

function figures(today: SiteDay, required_m: number, { load, words }: StatusInput): string {
	const place = isVehicle(load) ? 'at the thinnest of five spots' : 'at a random spot';
	const estimate = words.thickness(today.effective_m);
	return `${words.requirement(required_m)} is asked for; the ice counts as ${estimate}, lower bound ${words.thickness(bound_m(today, load))} ${place}.`;
}

/** What would decide it: the holes, and what they would have to find. */
function toShow(today: SiteDay, required_m: number, { load, words }: StatusInput): string {
	const mean_m = holesToShow_m(required_m, today, load);
	const along = isVehicle(load) ? ' along the way' : '';
	if (mean_m === null)
		return `To count as reached: ${holesFor(load)} holes${along}, none under ${words.requirement(required_m)}, and more of them on another day: one day's do not lift the bound that far.`;
	return `To count as reached: ${holesFor(load)} holes${along} with ${words.requirement(mean_m)} of clear ice on average, none under ${words.requirement(required_m)}.`;
}

function reachedText(
	support: Extract<Support, { isSupported: true }>,
	required_m: number,
	words: Words
): string {
	return `Chart minimum reached by ${support.holes} holes of ${words.day(support.on)}, which count until ${words.day(support.until)} at most: carried forward, the thinnest counts as ${words.thickness(support.thinnest_m)} and the lower bound is ${words.thickness(support.bound_m)}; ${words.requirement(required_m)} is asked for.`;
}
