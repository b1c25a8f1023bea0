import { total_m, type IceColumn } from '../column.ts';
import type { AppliedRule } from '../forecast.ts';
import { ROTTEN, rottenText } from '../rotten.ts';
import { shortSpellText, spellText } from '../spell-text.ts';
import type { WarmDay } from '../warm-day.ts';
import { ROTTING_SUN_W_m2, SHADING_SNOW_m } from '../warm-spell.ts';
import type { Words } from '../words.ts';
import { ROTTEN_RULE, MILD_RULE, STAY_OFF_RULE, SUN_RULE, TWICE_RULE } from './strength-rules.ts';

/** What warmth and sun have done to the strength of the ice, the gravest that holds. */
export type StrengthState =
	'open' | 'inFrost' | 'mild' | 'sunlit' | 'weakened' | 'closed' | 'rotten';

export interface Strength {
	state: StrengthState;
	/** In a sentence or two. */
	text: string;
	/** The published rule that says so; `null` in frost. */
	rule: AppliedRule | null;
	/** What is left of the strength of sound ice by the water inside it; 1 where there is none. */
	leftFraction: number;
}

export interface StrengthInput {
	warm: WarmDay | null;
	column: IceColumn;
	/** Clear-sky mean of the day. */
	sun_W_m2: number;
	/** Hours above freezing in the last 24; `null`: not known. */
	warmLast_h: number | null;
	words: Words;
}

const ALL_LOST = 0.6; // liquid fraction at which nothing is left [Bulatov1970] [M-med]

/**
 * Strength left in ice that holds water inside, of that of sound ice.
 *
 *   σ/σ0 = (1 - √(n/0.6))²
 *
 * n from 0 to 1, nothing is left from 0.6 on. Source: [Bulatov1970] [M-med].
 * @example strengthLeft(0.1) // => 0.35
 */
export function strengthLeft(liquidFraction: number): number {
	const lost = Math.sqrt(Math.min(1, Math.max(0, liquidFraction) / ALL_LOST));
	return (1 - lost) ** 2;
}

/** The strength of a site's ice in words, with the rule that says so and where that comes from. */
export function strengthOf(input: StrengthInput): Strength {
	const leftFraction = isOpen(input) ? 0 : strengthLeft(input.column.liquidFraction);
	return { ...stateOf(input), leftFraction };
}

function isOpen({ column }: StrengthInput): boolean {
	return total_m(column) <= 0;
}

function stateOf(input: StrengthInput): Omit<Strength, 'leftFraction'> {
	const { warm, column, sun_W_m2, warmLast_h, words } = input;
	if (warm !== null && warm.badCoreOn !== null)
		return { state: 'rotten', text: shortSpellText(warm, words), rule: ROTTEN_RULE };
	if (column.liquidFraction >= ROTTEN)
		return { state: 'rotten', text: `Stay off: ${rottenText(column)}`, rule: ROTTEN_RULE };
	if (isOpen(input))
		return { state: 'open', text: 'More likely than not no ice is left.', rule: null };
	const spell = warm === null ? null : spellText(warm, words);
	if (warm?.state === 'withheld')
		return { state: 'closed', text: spell ?? '', rule: STAY_OFF_RULE };
	if (warm?.state === 'doubled') return { state: 'weakened', text: spell ?? '', rule: TWICE_RULE };
	if (sun_W_m2 > ROTTING_SUN_W_m2 && column.snow_m < SHADING_SNOW_m)
		return {
			state: 'sunlit',
			text: 'The sun gets into bare ice: it takes the strength before the thickness, even in frost.',
			rule: SUN_RULE
		};
	if ((warmLast_h ?? 0) > 0)
		return {
			state: 'mild',
			text: 'Some hours above freezing, too few for a warm spell.',
			rule: MILD_RULE
		};
	return { state: 'inFrost', text: 'No warm-spell rule is in force.', rule: null };
}
