import { mark } from './marks.ts';
import { markup, type Markup } from './markup.ts';

type Entry = readonly [sample: Markup, words: string];

export const GROWTH: Entry = [mark('growth', [12, 8]), 'up to the winter’s thickest reading'];
export const DECAY: Entry = [mark('decay', [12, 8]), 'after it'];
export const BAR: Entry = [markup`<path class="bar growth" d="M2 8H22"/>`, 'four in five errors'];
export const BAND: Entry = [
	markup`<rect class="band" x="0" y="1" width="24" height="14"/>`,
	'nine in ten by chance'
];
export const OUTSIDE: Entry = [mark('growth', [12, 8], 'outside'), 'further off than that'];
export const INSIDE: Entry = [mark('growth', [12, 8], 'inside'), 'as chance has it'];

/** What the marks of a picture stand for. */
export function key(...entries: readonly Entry[]): Markup {
	return markup`<ul class="key">${entries.map(
		([sample, words]) =>
			markup`<li><svg viewBox="0 0 24 16" aria-hidden="true">${sample}</svg> ${words}</li>`
	)}</ul>`;
}
