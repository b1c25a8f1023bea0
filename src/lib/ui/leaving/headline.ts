import { day, shortDay } from '../format/day.ts';
import { isPast } from '../is-past.ts';
import type { OffReason } from '#lib/model/leaving/off-by.ts';
import type { StrengthState } from '#lib/model/leaving/strength.ts';
import type { ComingOffData } from './told.ts';
import { inDays } from './in-days.ts';
import { firstOff } from './off-words.ts';

/** The page's answer in a sentence, and what belongs right under it. */
export interface Headline {
	main: string;
	rest: string[];
}

/** What comes before any day. */
const STAY_OFF: Partial<Record<StrengthState, string>> = {
	open: 'Stay off: by the estimate no ice is left.',
	rotten: 'Stay off: the ice is rotten, whatever it measures.',
	closed: 'Stay off: the thaw has closed the ice, whatever it measures.'
};

/** After the day. */
const WHY: Record<OffReason, string> = {
	removalDate: ', the local removal date',
	thickness: ': in one case of ten the ice is too thin after that',
	snow: ': in one case of ten snow sinks the ice under it after that',
	warmSpell: ', before a warm spell that is likely to stay'
};

/** More of them are counted. */
const NAMED = 2;

/**
 * By when everything has to be off. The local removal date is said before anything that is
 * estimated, unless the ice sends something off sooner; a thaw that closes the ice now, before both.
 */
export function comingOffHeadline(told: ComingOffData): Headline {
	const { leaving, asOf, now, removalOn, iceOutOn } = told;
	if (iceOutOn !== null)
		return { main: `Open water: ice-out was on ${day(iceOutOn)}.`, rest: removalText(told) };
	if (leaving === null)
		return {
			main: `Not known for ${day(asOf)}: the weather does not reach that day.`,
			rest: removalText(told)
		};
	const { strength, texts } = leaving;
	const then = isPast({ asOf, today: told.today }) ? [`As it was known on ${day(asOf)}.`] : [];
	const byIce = iceText(told);
	const stayOff = STAY_OFF[strength.state];
	if (stayOff !== undefined)
		return { main: stayOff, rest: [...removalText(told), texts.lost, ...then] };
	// What is in force is said among the cautions, right below.
	const isSaid = strength.state === 'weakened' || strength.state === 'sunlit';
	const thaw = [...(isSaid ? [] : [strength.text]), texts.lost, ...then];
	const first = firstOff(told);
	if (removalOn !== null && first !== null && first.on < removalOn)
		return { main: byIce, rest: [...removalText(told), ...thaw] };
	if (removalOn !== null)
		return {
			main: `Everything off by ${shortDay(removalOn)}, ${inDays(now, removalOn)}: the local removal date.`,
			rest: [byIce, ...thaw]
		};
	return { main: byIce, rest: thaw };
}

function removalText({ removalOn, now }: ComingOffData): string[] {
	return removalOn === null
		? []
		: [`The local removal date is ${shortDay(removalOn)}, ${inDays(now, removalOn)}.`];
}

function iceText(told: ComingOffData): string {
	const { leaving, now } = told;
	const first = firstOff(told);
	if (first === null)
		return leaving === null || leaving.loads.every(({ warmEnd }) => warmEnd.kind === 'unknown')
			? 'No day to be off by is estimated.'
			: `By the ice alone, nothing has to be off by ${shortDay(leaving.toldTo)}.`;
	const why = WHY[first.reason];
	const by = first.on <= now ? 'today' : `by ${shortDay(first.on)}, ${inDays(now, first.on)}`;
	if (first.isAll) return `By the ice alone everything off ${by}${why}.`;
	const { names } = first;
	const who = names.length > NAMED ? `${names.length} loads` : names.join(' and ');
	return `By the ice alone the first to come off: ${who}, ${by}${why}.`;
}
