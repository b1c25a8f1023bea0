/** A true minus sign, and no minus before zero. */
export function signed(value: number): string {
	return value < 0 ? `−${Math.abs(value)}` : String(Math.abs(value));
}

const BEFORE_THREE_DIGITS = /\B(?=(\d{3})+$)/g;

/**
 * Whole, with its thousands apart. By hand, since the first number that a phone words in a language
 * costs it as much as drawing a chart. @example grouped(2900) // => '2,900'
 */
export function grouped(value: number): string {
	return String(Math.round(value)).replace(BEFORE_THREE_DIGITS, ',');
}
