import { shortDay } from './format/day.ts';
import { thickness, thicknessNumber } from './format/length.ts';
import { STATUS_WORDS } from './status-words.ts';
import type { LoadStatus } from '#lib/model/forecast.ts';
import type { Units } from './units-setting.ts';

interface Ice {
	p05_m: number;
	p50_m: number;
	p95_m: number;
	bound_m: number;
}

/** The ice with its doubt. @example iceWords(ice, metric) // => '22 cm, likely 17 to 26' */
export function iceWords({ p05_m, p50_m, p95_m }: Ice, units: Units): string {
	const [low, high] = [p05_m, p95_m].map((metres) => thicknessNumber(metres, units));
	return `${thickness(p50_m, units)}, nine holes in ten ${low} to ${high}`;
}

/** What a hole did to the estimate, in a sentence. */
export function movedWords({ before, after }: { before: Ice; after: Ice }, units: Units): string {
	const [was, is] = [before, after].map(({ p50_m }) => thickness(p50_m, units));
	const [wasBound, isBound] = [before, after].map(({ bound_m }) => thickness(bound_m, units));
	const estimate =
		was === is ? `The estimate stays at ${is}` : `The estimate goes from ${was} to ${is}`;
	const bound =
		wasBound === isBound
			? `the lower bound stays at ${isBound}`
			: `the lower bound goes from ${wasBound} to ${isBound}`;
	return `${estimate}, ${bound}.`;
}

/** When it counts, where the weather of its day is not in. */
export function aheadWords(on: string, asOf: string): string {
	return `The weather is in up to ${shortDay(asOf)}. Until that of ${shortDay(on)} is, the hole can take from where a load stands and not add to it.`;
}

/** @example statusWords({ before: 'notYet', after: 'notYet' }) // => 'Not yet, as before' */
export function statusWords({ before, after }: { before: LoadStatus; after: LoadStatus }): string {
	return before === after
		? `${STATUS_WORDS[after]}, as before`
		: `${STATUS_WORDS[after]}; before it: ${STATUS_WORDS[before].toLowerCase()}`;
}
