/** What somebody typed into a number field: a number, nothing, or something to say about it. */
export type TypedNumber =
	{ value: number | null; problem: null } | { value: null; problem: string };

/**
 * Reads a number as people type it: decimal comma or point, a true minus sign, thin spaces.
 * `1,234` is asked about, because it is a thousand to some and one and a bit to others.
 *
 * @example readTypedNumber('−3,5') // => { value: -3.5, problem: null }
 */
export function readTypedNumber(text: string): TypedNumber {
	const compact = text.replace(/[\s\u00a0\u2009\u202f']/g, '').replace(/^[−–]/, '-');
	if (compact === '') return { value: null, problem: null };
	if (/^-?[1-9]\d{0,2}(?:,\d{3})+$/.test(compact)) return { value: null, problem: eitherWay(text) };
	const plain = compact.replace(',', '.');
	if (!/^[-+]?(?:\d+\.?\d*|\.\d+)$/.test(plain)) {
		return {
			value: null,
			problem: `“${text.trim()}” is not a number. Type digits only, like 23 or 23.5.`
		};
	}
	return { value: Number(plain), problem: null };
}

function eitherWay(text: string): string {
	const typed = text.trim();
	const whole = typed.replaceAll(',', '');
	const broken = typed.replace(',', '.');
	return `“${typed}” can be read two ways. Type ${whole}${typed.split(',').length === 2 ? `, or ${broken}` : ''}.`;
}
