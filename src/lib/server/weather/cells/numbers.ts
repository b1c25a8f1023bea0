import { inQuotes } from './quote.ts';

export type Decimal = '.' | ',';

const MISSING_WORDS =
	/^(|na|n\/a|n\.a\.|#n\/a|nan|#num!|null|none|nil|nd|n\/d|m|mm|missing|no data|nodata|-|--|---|–|—|\.|\*+|\?|x)$/i;

/** A trace fell or lies, too little to measure: nothing as a number. */
export const TRACE = /^(t|trace|0[.,]0+ ?t)$/i;

const NUMBERS: Readonly<Record<Decimal, RegExp>> = {
	'.': /^[+\u2212\u2013-]?(\d+(\.\d*)?|\.\d+)(e[+-]?\d{1,3})?$/i,
	',': /^[+\u2212\u2013-]?(\d+(,\d*)?|,\d+)(e[+-]?\d{1,3})?$/i
};

const LONGEST = 32;

export type NumberCell = { value: number | null; reason: null } | { value: null; reason: string };

/** A cell as a number, as missing, or with the reason why it is neither. */
export function readNumber(text: string, decimal: Decimal): NumberCell {
	if (MISSING_WORDS.test(text)) return { value: null, reason: null };
	if (text.length <= LONGEST && NUMBERS[decimal].test(text)) {
		const value = Number(text.replace(/[\u2212\u2013]/, '-').replace(',', '.'));
		if (Number.isFinite(value)) return { value, reason: null };
	}
	return { value: null, reason: `${inQuotes(text)} ${whyNot(text, decimal)}` };
}

function whyNot(text: string, decimal: Decimal): string {
	if (/^[+\u2212-]?\d{1,3}([., \u00A0\u202F'’]\d{3})+([.,]\d+)?$/.test(text)) {
		return 'has a mark between thousands or another decimal mark than the rest; write plain numbers';
	}
	const other = decimal === '.' ? ',' : '.';
	if (text.includes(other) && NUMBERS[other].test(text)) {
		return `has "${other}" as its decimal mark where the rest of the file has "${decimal}"; write it as the rest is`;
	}
	return 'is not a number; correct it or leave it empty';
}

/** Numbers that stand for "no value" wherever they are found: −999, 9999.9, −99 and the like. */
export function isMissingCode(text: string, isTenths: boolean): boolean {
	const plain = text.replace(',', '.').replace(/[\u2212\u2013]/, '-');
	if (/^-?9{4,6}(\.(9|0){1,4})?$/.test(plain)) return true;
	return !isTenths && (/^-?9{3}(\.(9|0){1,4})?$/.test(plain) || /^-99(\.(9|0){1,3})?$/.test(plain));
}

/** Codes that can be values too: missing only where they can't be. */
export function isDoubtfulCode(value: number): boolean {
	return (
		[99, 99.9, 99.99, -6999, 6999, 7999, -7999, 32767, -32768, 65535].includes(value) ||
		Math.abs(value) >= 1e20
	);
}

export interface DecimalVote {
	decimal: Decimal;
	/** Cells with the other mark, as a share of the cells that have one. */
	strayShare: number;
}

/** The decimal mark that most of these cells have; a point where none has any. */
export function voteDecimal(cells: readonly string[]): DecimalVote {
	const commas = cells.filter((cell) => /^[+\u2212\u2013-]?\d*,\d+$/.test(cell)).length;
	const points = cells.filter((cell) => /^[+\u2212\u2013-]?\d*\.\d+$/.test(cell)).length;
	const decimal = commas > points ? ',' : '.';
	const total = commas + points;
	return { decimal, strayShare: total === 0 ? 0 : Math.min(commas, points) / total };
}
