/** One part of how the number is made. */
export interface Step {
	title: string;
	words: string;
	/** Each on a line of its own; `_{…}` stands low, `^{…}` high. */
	equations?: readonly string[];
	/** What the letters mean: a symbol, what it is, and its unit or value. */
	where?: readonly (readonly [symbol: string, meaning: string])[];
	/** Author and year, with the tag that says how far it is confirmed. */
	source: string;
}

/** Parts that belong together, with a heading that can be linked to. */
export interface Chapter {
	id: string;
	title: string;
	steps: readonly Step[];
}

/** A piece of an equation, and where it stands. */
export interface EquationPart {
	text: string;
	at: 'line' | 'low' | 'high';
}

/** @example equationParts('h^{2}') // => [{ text: 'h', at: 'line' }, { text: '2', at: 'high' }] */
export function equationParts(equation: string): EquationPart[] {
	return equation.split(/([_^]\{[^}]*\})/).flatMap((piece): EquationPart[] => {
		if (piece === '') return [];
		if (!/^[_^]\{/.test(piece)) return [{ text: piece, at: 'line' }];
		return [{ text: piece.slice(2, -1), at: piece.startsWith('_') ? 'low' : 'high' }];
	});
}
