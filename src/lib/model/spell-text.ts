import { REFREEZING_degCd, REFREEZING_h, type WarmDay } from './warm-spell.ts';
import type { Words } from './words.ts';

/** A warm spell in a sentence or two: since when, what it does, what would end it; `null` without one. */
export function spellText(warm: WarmDay, words: Words): string | null {
	if (warm.state === 'none') return null;
	return [cause(warm, words), effect(warm), ending(warm, words)].join(' ');
}

function cause(warm: WarmDay, words: Words): string {
	if (warm.badCoreOn !== null)
		return `The core of ${words.day(warm.badCoreOn)} was wet or candled.`;
	const since = words.day(warm.since ?? warm.on);
	const last = warm.lastWarmOn === null ? since : words.day(warm.lastWarmOn);
	return last === since
		? `Warm spell of ${since}.`
		: `Warm spell since ${since}, last warm on ${last}.`;
}

function effect(warm: WarmDay): string {
	return warm.state === 'withheld'
		? 'Stay off, whatever the thickness.'
		: 'The thickness asked for is doubled.';
}

function ending(warm: WarmDay, words: Words): string {
	if (warm.lastWarmOn === null) return 'Only a core logged as sound ends it.';
	const hole = warm.hadSunOnBareIce
		? 'a new hole whose core is logged as sound, since sun has been on bare ice'
		: `a new hole${warm.badCoreOn === null ? '' : ' whose core is logged as sound'}`;
	const wanted = `It ends after ${REFREEZING_h} hours below freezing with ${words.degreeDays(REFREEZING_degCd)} of frost, and ${hole}.`;
	const isRefrozen = warm.frost_h >= REFREEZING_h && warm.frost_degCd >= REFREEZING_degCd;
	const so = isRefrozen
		? 'The frost has been enough; the hole is missing.'
		: `So far ${warm.frost_h} hours and ${words.degreeDays(warm.frost_degCd)}.`;
	return `${wanted} ${so}`;
}
