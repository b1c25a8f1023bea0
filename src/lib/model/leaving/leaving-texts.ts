import { daysBetween, type IsoDate } from '../calendar.ts';
import type { IceOutDates } from '../forecast.ts';
import { counted, type Words } from '../words.ts';
import type { Leaving } from './leaving.ts';
import { LEAST_TOLD_m } from './thinner-since.ts';
import { LEAST_SLUSH_m, type SlushOutlook } from './slush-outlook.ts';

/** Each answer in a sentence. */
export interface LeavingTexts {
	warmth: string;
	lost: string;
	nights: string;
	spell: string;
	iceOut: string;
	slush: string | null;
	shore: string;
}

export interface TextFacts {
	asOf: IsoDate;
	iceOut: IceOutDates | null;
	words: Words;
}

/** Where ice goes first: [Ashton] [R] on shores and inlets; sanded landings [M-hi], common practice. */
export const SHORE_TEXT =
	'The landing closes before the lake: ice at the shore goes first, soonest where gravel, sand, salt, run-off or dark rocks take up the sun. The thickest ice is out in the middle, and gets nobody off.';

export function leavingTexts(
	leaving: Omit<Leaving, 'texts'>,
	{ asOf, iceOut, words }: TextFacts
): LeavingTexts {
	return {
		warmth: warmthText(leaving, asOf, words),
		lost: lostText(leaving, asOf, words),
		nights: nightsText(leaving),
		spell:
			leaving.spellFrom === null
				? `No warm spell that stays is more likely than not by ${words.day(leaving.toldTo)}.`
				: `From ${words.day(leaving.spellFrom)} on a warm-spell rule is in force more likely than not, whatever the ice measures.`,
		iceOut: iceOutText(leaving, iceOut, words),
		slush: leaving.slush === null ? null : slushText(leaving.slush, asOf, words),
		shore: SHORE_TEXT
	};
}

function warmthText(
	{ warmLast_h, peakOn, thawSincePeak_degCd, isSunOnBareIce }: Omit<Leaving, 'texts'>,
	asOf: IsoDate,
	words: Words
): string {
	const hours =
		warmLast_h === null
			? 'How long it was above freezing in the last day is not known.'
			: warmLast_h <= 0
				? 'No hour of the last day was above freezing.'
				: `${counted(Math.ceil(warmLast_h), 'hour')} of the last 24 ${warmLast_h > 1 ? 'were' : 'was'} above freezing.`;
	const thaw =
		peakOn >= asOf
			? ''
			: ` Since the ice was thickest, on ${words.day(peakOn)}, ${words.degreeDays(thawSincePeak_degCd)} of thaw have come.`;
	const sun = isSunOnBareIce ? ' The sun is on bare ice.' : '';
	return `${hours}${thaw}${sun}`;
}

function lostText(leaving: Omit<Leaving, 'texts'>, asOf: IsoDate, words: Words): string {
	const { thinnerSince } = leaving;
	if (thinnerSince === null) return byWeatherText(leaving, words);
	const { on, total_m } = thinnerSince;
	const seen =
		total_m <= 0
			? `On ${words.day(on)} it was open`
			: `A hole of ${words.day(on)} shows ${words.thickness(total_m)}, less than the estimate`;
	return `${seen}: what has gone is not known before the weather of that day is in. To ${words.day(asOf)}: ${lowerFirst(byWeatherText(leaving, words))}`;
}

function byWeatherText({ lost, peakOn }: Omit<Leaving, 'texts'>, words: Words): string {
	if (lost.p90_m < LEAST_TOLD_m) return 'No ice has been lost to the weather so far.';
	const since = `since ${words.day(peakOn)}`;
	if (lost.p50_m < LEAST_TOLD_m)
		return `More likely than not nothing has been lost yet; at one spot of ten ${words.depth(lost.p90_m)} or more.`;
	return `About ${words.depth(lost.p50_m)} of ice has gone ${since}; at eight spots of ten between ${words.depth(lost.p10_m)} and ${words.depth(lost.p90_m)}.`;
}

function lowerFirst(text: string): string {
	return text.charAt(0).toLowerCase() + text.slice(1);
}

function nightsText({ nights }: Omit<Leaving, 'texts'>): string {
	const ahead = nights.filter(({ source }) => source === 'forecast');
	if (ahead.length === 0) return 'There is no forecast that says whether the nights freeze again.';
	const cold = ahead.filter(({ refreezes }) => refreezes).length;
	const said =
		cold === 0
			? `None of the next ${counted(ahead.length, 'day')} has six hours of frost`
			: `${cold} of the next ${counted(ahead.length, 'day')} ${cold === 1 ? 'has' : 'have'} six hours of frost or more`;
	return `${said}. A cold night makes white ice of the water at the top; what was lost inside does not come back with it.`;
}

function iceOutText(
	{ toldTo }: Omit<Leaving, 'texts'>,
	iceOut: IceOutDates | null,
	words: Words
): string {
	const { p10, p50, p90 } = iceOut ?? { p10: null, p50: null, p90: null };
	if (p10 === null) return `In nine cases of ten the ice is not gone by ${words.day(toldTo)}.`;
	const from = `${words.day(p10)} and ${p90 === null ? `later than ${words.day(toldTo)}` : words.day(p90)}`;
	const middle = p50 === null ? '' : `, as likely before ${words.day(p50)} as after`;
	return `In eight cases of ten the ice goes between ${from}${middle}. A window of a week either way is usual at best; wind can break rotten ice sooner.`;
}

function slushText(slush: SlushOutlook, asOf: IsoDate, words: Words): string {
	return [depthText(slush, words), frozenText(slush, asOf, words), floodText(slush, words)]
		.filter((text) => text !== '')
		.join(' ');
}

function depthText({ p50_m, p90_m }: SlushOutlook, words: Words): string {
	if (p90_m < LEAST_SLUSH_m) return 'No slush is estimated.';
	const most = `at one spot of ten ${words.depth(p90_m)} or more`;
	return p50_m < LEAST_SLUSH_m
		? `More likely than not there is no slush at a spot; ${most}.`
		: `About ${words.depth(p50_m)} of slush, ${most}. It carries nothing, hides weak ice, and holds machines fast.`;
}

/** Later days are those of the ice-out rather than of a frost. Our choice. */
const SOON_d = 42;

function frozenText(slush: SlushOutlook, asOf: IsoDate, words: Words): string {
	const { needs_degCd, p50_m, frozenBy, surelyFrozenBy } = slush;
	if (needs_degCd === null) return '';
	const needs = `It takes ${words.degreeDays(needs_degCd)} of frost under the snow that lies on it`;
	if (p50_m < LEAST_SLUSH_m)
		return surelyFrozenBy === null || daysBetween(asOf, surelyFrozenBy) > SOON_d
			? `${needs}; with the snow to come some of it is likely to stay for weeks.`
			: `${needs}: nine spots of ten are free of it by ${words.day(surelyFrozenBy)}.`;
	if (frozenBy === null || daysBetween(asOf, frozenBy) > SOON_d)
		return `${needs}: more than the next ${SOON_d} days bring to half of the spots, with the snow that falls.`;
	const days = counted(daysBetween(asOf, frozenBy), 'day');
	const surely =
		surelyFrozenBy === null ? '' : `, at nine spots of ten by ${words.day(surelyFrozenBy)}`;
	return `${needs}: at the forecast ${days}, to ${words.day(frozenBy)}, at half of the spots${surely}.`;
}

function floodText({ floodsWith_m, floodFrom }: SlushOutlook, words: Words): string {
	const ahead =
		floodFrom === null
			? ''
			: `By the forecast snow floods it from ${words.day(floodFrom)}, as likely as not.`;
	if (floodsWith_m === null) return ahead;
	const more =
		floodsWith_m < LEAST_TOLD_m
			? 'The snow is about as heavy as the ice can float: any more of it brings water up.'
			: `About ${words.depth(floodsWith_m)} more snow floods it.`;
	return `${more} ${ahead}`.trim();
}
