import { REFREEZING_degCd, REFREEZING_h, isRefrozen, type WarmDay } from './warm-day.ts';
import type { Words } from './words.ts';

/** A warm spell in a few sentences: when, what it does, what ends it; `null` without one. */
export function spellText(warm: WarmDay, words: Words): string | null {
	if (warm.state === 'none') return null;
	const does =
		warm.state === 'withheld'
			? 'Stay off, whatever the thickness.'
			: 'The thickness asked for is doubled.';
	return `${sentence(causeText(warm, words))} ${does} ${endingText(warm, words)}`;
}

/** The same in a few words, for a line that has more to say. */
export function shortSpellText(warm: WarmDay, words: Words): string {
	const missing = isRefrozen(warm) ? ', and no hole since that ends it' : '';
	return `Stay off: ${causeText(warm, words)}${missing}.`;
}

function causeText(warm: WarmDay, words: Words): string {
	if (warm.badCoreOn !== null) return `the core of ${words.day(warm.badCoreOn)} was wet or candled`;
	const since = words.day(warm.since ?? warm.on);
	const last = words.day(warm.lastWarmOn ?? warm.on);
	return last === since ? `warm spell of ${since}` : `warm spell from ${since} to ${last}`;
}

function endingText(warm: WarmDay, words: Words): string {
	if (warm.lastWarmOn === null) return 'Only a core of the open part logged as sound ends it.';
	const hole =
		warm.hadSunOnBareIce || warm.badCoreOn !== null
			? 'a new hole on the open part whose core is logged as sound'
			: 'a new hole on the open part';
	const why = warm.hadSunOnBareIce ? ', since sun has been on bare ice' : '';
	if (isRefrozen(warm)) return `The frost since has been enough; ${hole} ends it${why}.`;
	return `It ends after ${REFREEZING_h} hours below freezing with ${words.degreeDays(REFREEZING_degCd)} of frost (so far ${warm.frost_h} hours, ${words.degreeDays(warm.frost_degCd)}) and ${hole}${why}.`;
}

function sentence(words: string): string {
	return `${words.charAt(0).toUpperCase()}${words.slice(1)}.`;
}
