/** Marks that turn the direction of writing; a stray one garbles the page around it. */
const TURNS = /[\u200e\u200f\u202a-\u202e\u2066-\u2069]/g;
// oxlint-disable-next-line no-control-regex
const CONTROLS = /[\u0000-\u001f\u007f-\u009f\ufffe\uffff]+/g;

/** One line of text without control characters and of a length; `null` where nothing is left. */
export function plainText(text: unknown, longest: number): string | null {
	if (typeof text !== 'string') return null;
	const line = text.replace(TURNS, '').replace(CONTROLS, ' ').replace(/\s+/g, ' ').trim();
	const cut = [...line].slice(0, longest).join('').toWellFormed().trim();
	return cut.slice(0, longest) || null;
}
