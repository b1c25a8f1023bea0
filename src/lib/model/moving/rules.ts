import type { AppliedRule } from '../forecast.ts';
import type { LoadCase } from '../load-case.ts';
import type { Words } from '../words.ts';
import type { Counted } from './counted.ts';

const SPACING_SOURCE =
	'about 100 thicknesses: common practice from memory; 53 to 97 in TM 5-852-1, table 2-1';

/** How a trailer and the others of a group count, where there are any. */
export function countedRules(load: LoadCase, counted: Counted, words: Words): AppliedRule[] {
	return [...trailerRules(load, counted, words), ...groupRules(load, counted, words)];
}

function trailerRules({ trailer }: LoadCase, counted: Counted, words: Words): AppliedRule[] {
	if (trailer === null || counted.trailer === null) return [];
	const asked = words.distance(counted.trailerSpacing_m);
	const text =
		counted.trailer === 'apart'
			? `What it draws, ${words.mass(trailer.mass_kg)}, is kept ${asked} or more behind and counts on its own; the heavier of the two decides.`
			: `What it draws, ${words.mass(trailer.mass_kg)}, counts with it: the ice feels both at one place unless they are kept ${asked} apart.`;
	return [{ code: `trailer-${counted.trailer}`, text, source: SPACING_SOURCE }];
}

function groupRules({ count }: LoadCase, counted: Counted, words: Words): AppliedRule[] {
	if (counted.others === null) return [];
	const asked = words.distance(counted.spacing_m);
	const text =
		counted.others === 'apart'
			? `${count} of them, kept ${asked} or more from each other: each counts on its own.`
			: `${count} of them nearer than ${asked} to each other count together: ${words.mass(counted.mass_kg)}.`;
	return [{ code: `group-${counted.others}`, text, source: SPACING_SOURCE }];
}
