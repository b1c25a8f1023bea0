import { shortDay } from '#lib/ui/format/day.ts';
import { rate, thickness } from '#lib/ui/format/length.ts';
import type { Units } from '#lib/ui/units-setting.ts';
import { ATTENTION_WORDS } from './attention.ts';
import type { LakeCard, SiteBeside } from './lake-card.ts';
import type { NextDate } from './next-date.ts';

/** A change of less is none. */
const STILL_m = 0.0005;

type Changed = Pick<LakeCard, 'growth_m_d' | 'boundChange_m' | 'newLoads' | 'warmSince' | 'asOf'>;

/** What is another than the day before; `null` where the day before is not known. */
export function changeSentence(card: Changed, units: Units): string | null {
	const { growth_m_d, boundChange_m, newLoads, warmSince, asOf } = card;
	if (growth_m_d === null) return null;
	const bound = boundChange_m === null ? '' : `, lower bound ${signedRate(boundChange_m, units)}`;
	const news = [
		...(warmSince === asOf ? ['a warm spell has begun'] : []),
		...(newLoads.length > 0 ? [`new above the lower bound: ${newLoads.join(', ')}`] : [])
	];
	const more = news.length === 0 ? '' : `; ${news.join('; ')}`;
	return `In the last day: estimate ${signedRate(growth_m_d, units)}${bound}${more}.`;
}

function signedRate(change_m: number, units: Units): string {
	if (Math.abs(change_m) < STILL_m) return 'as it was';
	return `${change_m > 0 ? '+' : '−'}${rate(change_m, units).replace(' a day', '')}`;
}

/** The next date that matters, in a few words. */
export function nextSentence({ on, kind, loads }: NextDate): string {
	const who = loads.length > 2 ? `${loads.length} loads` : loads.join(' and ');
	if (kind === 'removal') return `Next: ${shortDay(on)}, the local removal date for everything.`;
	if (kind === 'offBy') return `Next: ${shortDay(on)}, the latest day to have ${who} off.`;
	if (kind === 'until') return `Next: ${shortDay(on)}, the last day told for ${who}.`;
	return `Next: ${shortDay(on)}, ${who} ${kind} by thickness.`;
}

/** The estimate with its doubt, for a card. */
export function estimateWords(
	day: { total_m: number; totalLower_m: number | null },
	units: Units,
	{ isWithheld = false } = {}
): string {
	if (day.total_m < 0.005) return 'Open water by this estimate';
	const lower =
		day.totalLower_m === null ? '' : `, lower bound ${thickness(day.totalLower_m, units)}`;
	return `${isWithheld ? 'Stay off: about' : 'About'} ${thickness(day.total_m, units)} of ice${lower}`;
}

/** As many as are read at a glance. */
const BESIDE = 3;

const LACKS = { comingUp: 'still being worked out', failed: 'could not be worked out' } as const;

/** What stands on the other sites, so that the one that is told is not taken for the lake. */
export function besideSentence(sites: readonly SiteBeside[], units: Units): string | null {
	if (sites.length === 0) return null;
	const named = sites.slice(0, BESIDE).map(({ name, attention, totalLower_m, lacks }) => {
		if (lacks !== null) return `${name}, ${LACKS[lacks]}`;
		if (attention !== null) return `${name}, ${ATTENTION_WORDS[attention].toLowerCase()}`;
		return `${name}, ${totalLower_m === null ? 'not known' : `lower bound ${thickness(totalLower_m, units)}`}`;
	});
	const more = sites.length > BESIDE ? [`${sites.length - BESIDE} more`] : [];
	return `Beside it: ${[...named, ...more].join('; ')}.`;
}
