/** A true minus sign, and no minus before zero. */
export function signed(value: number): string {
	return value < 0 ? `−${Math.abs(value)}` : String(Math.abs(value));
}

/** Whole, with its thousands apart. @example grouped(2900) // => '2,900' */
export function grouped(value: number): string {
	return Math.round(value).toLocaleString('en-GB');
}
