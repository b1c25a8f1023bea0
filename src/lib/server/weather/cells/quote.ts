/** @example inQuotes('abc') // => '"abc"', cut to a length that fits a message */
export function inQuotes(text: string): string {
	const shown = text.replace(/[^\P{C}\t]/gu, '\uFFFD');
	return shown.length > 40 ? `"${shown.slice(0, 40)}…"` : `"${shown}"`;
}
