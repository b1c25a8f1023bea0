import { expect, test } from 'vitest';
import { tied } from '#lib/ui/format/tied.ts';

const shown = (text: string) => tied(text).replaceAll('\u00a0', '~');

test.each([
	['About 46 cm of ice on 8 Apr 2025', 'About 46~cm of ice on 8~Apr 2025'],
	['one hole in ten may show less than 48.', 'one hole in ten may show less than~48.'],
	['by 7 Mar, in 23 days: in one case', 'by 7~Mar, in~23~days: in one case'],
	['Chance of a first skim: roughly 3 in 10.', 'Chance of a first skim: roughly 3~in~10.'],
	['under 1.5 in of ice', 'under 1.5~in of ice'],
	['3 sites: Reed Bay', '3 sites: Reed Bay'],
	['on 12 occasions', 'on 12 occasions']
])('%s', (text, lines) => expect(shown(text)).toBe(lines));

test('nothing but the kind of a space changes', () => {
	const text = 'Stay off, whatever it measured: about 46 cm of ice, 3 in 10, less than 38.';
	expect(tied(text).replaceAll('\u00a0', ' ')).toBe(text);
});
