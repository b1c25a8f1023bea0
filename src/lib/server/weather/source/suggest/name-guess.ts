import { headingOf } from '../../cells/header-roles.ts';
import { isValueRole, type ValueRole } from '../../cells/units.ts';
import type { Step } from './json-path.ts';

export interface NameGuess {
	role: ValueRole;
	/** The lower, the surer. */
	rank: number;
	unit: string | null;
	/** Hours that the name gives to an amount. */
	duration_h: number | null;
	/** The name says that the amount is of what follows, or of what went before. */
	stamp: 'start' | 'end' | null;
	name: string;
}

/** Names that say nothing of what is measured. */
const EMPTY_NAMES = /^(value|values|v|val|data|details|result|avg|amount)$/i;

/** What a value is by the names on the way to it, or `null`. */
export function guessByName(steps: readonly Step[]): NameGuess | null {
	const names = steps.filter((step) => typeof step === 'string' && step !== '*').map(String);
	const telling = names.filter((name) => !EMPTY_NAMES.test(name));
	const last = telling.at(-1);
	if (last === undefined) return null;
	// "speed" says something behind "wind" only.
	const tries = [last, telling.slice(-2).join(' ')];
	for (const name of tries) {
		const { role, rank, unit, doubt } = headingOf(name, '');
		if (!isValueRole(role) || doubt !== null) continue;
		return { role, rank, unit, name, ...ofWay(names.join(' ')) };
	}
	return null;
}

function ofWay(way: string): Pick<NameGuess, 'duration_h' | 'stamp'> {
	const hours = /(\d{1,2})[_ ]?h(?:(?:ou)?rs?)?(?![a-z])/i.exec(way)?.[1];
	const length = hours === undefined ? NaN : Number(hours);
	return {
		duration_h: length >= 1 && length <= 24 ? length : null,
		stamp: /next|coming|following/i.test(way)
			? 'start'
			: /last|past|prev|preceding/i.test(way)
				? 'end'
				: null
	};
}
