import type { IsoDate } from '#lib/model/calendar.ts';
import type { EarlyIce } from '#lib/model/early/early-ice.ts';
import { day } from '../format/day.ts';
import { isPast } from '../is-past.ts';
import { growth, verdict } from '../sentences.ts';
import type { SeriesDay } from '../charts/series.ts';
import type { Units } from '../units-setting.ts';
import { freezingHeadline } from './freezing-words.ts';
import { testHeadline } from './test-words.ts';

/** What the headline goes by. */
export interface EarlyTold {
	early: EarlyIce;
	/** The ice of the day of asking. */
	day: SeriesDay | null;
	isWithheld: boolean;
	/** Whether each of the first loads is met at the lower bound, drilled or not. */
	areFirstMet: boolean;
	iceOutOn: IsoDate | null;
	/** Where the ice broke under somebody lately. */
	broke: { on: IsoDate; place: string | null } | null;
	asOf: IsoDate;
	today: IsoDate;
	lake: { water: string };
}

interface Headline {
	main: string;
	rest: string[];
}

/**
 * The page's answer in a sentence, and what belongs right under it. That the ice broke lately is said
 * before anything that is estimated.
 */
export function earlyHeadline(told: EarlyTold, units: Units): Headline {
	const { main, rest } = answerOf(told, units);
	return told.broke === null
		? { main, rest }
		: { main: brokeText(told.broke), rest: [main, ...rest] };
}

function brokeText({ on, place }: NonNullable<EarlyTold['broke']>): string {
	const at = place === null ? '' : ` at ${place}`;
	return `The ice broke${at} on ${day(on)}: keep away from there, whatever is estimated.`;
}

function answerOf(told: EarlyTold, units: Units): Headline {
	const { early, asOf, isWithheld } = told;
	const then = isPast(told) ? [`As it was known on ${day(asOf)}.`] : [];
	if (early.phase === 'past') return { main: pastHeadline(told), rest: then };
	if (early.phase === 'growing' && early.growth) {
		const main = testHeadline(early.growth, { now: early.now, isWithheld }, units);
		return { main, rest: [...iceOf(told, units), ...then] };
	}
	if (early.phase === 'beforeFreezeUp')
		return { main: freezingHeadline(early.freezing, early.now), rest: [...riverOf(told), ...then] };
	return {
		main: 'Not known: there is no weather that reaches this day.',
		rest: ['Early ice goes by the temperatures of this winter, from early autumn on.', ...then]
	};
}

/** Growth alone never speaks against a status. */
function pastHeadline({ early, iceOutOn, isWithheld, areFirstMet }: EarlyTold): string {
	const because = early.pastBecause ?? 'noMoreGrowth';
	if (isWithheld && because !== 'iceOut')
		return 'Stay off, whatever the ice measures. The early season is over.';
	const why = {
		iceOut: iceOutOn === null ? 'ice-out is on record' : `ice-out was on ${day(iceOutOn)}`,
		firstLoadsLikely: areFirstMet
			? 'on foot, in a group and by snowmobile the chart minimums are likely met'
			: 'but on foot, in a group or by snowmobile the chart minimum is not met at the lower bound',
		noMoreGrowth: 'the ice is not expected to become any thicker'
	};
	return `The early season is over: ${why[because]}.`;
}

function iceOf(told: EarlyTold, units: Units): string[] {
	if (told.day === null) return [];
	const { main, rest } = verdict(told.day, units, { isPast: isPast(told) });
	const rate = growth(told.early.growth?.growth_m_d ?? null, units);
	return [[main, rest, rate].filter((part) => part !== null).join(' ')];
}

function riverOf({ lake, early }: EarlyTold): string[] {
	return lake.water === 'river' && early.freezing === null
		? ['For a river no chance of a skim is told: moving water freezes by rules of its own.']
		: [];
}
