/** Marks that turn the direction of writing for all that follows: a stray one garbles the page around it. */
const TURNS = /[\u202a-\u202e\u2066-\u2069]/g;
/** What is no letter and no sign; lines may end and tabs may stand in a text of several lines. */
// oxlint-disable-next-line no-control-regex
const CONTROLS = /[\u0000-\u001f\u007f-\u009f\ufffe\uffff]+/g;
// oxlint-disable-next-line no-control-regex
const CONTROLS_IN_LINES = /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\ufffe\uffff]+/g;

/** A name as it is stored: one line, without what can be seen by nobody. */
export function plainLine(text: string): string {
	return text.toWellFormed().replace(TURNS, '').replace(CONTROLS, ' ').trim();
}

/** Free text as it is stored: as {@link plainLine}, but with its lines. */
export function plainLines(text: string): string {
	const lines = text.toWellFormed().replace(/\r\n?/g, '\n').replace(TURNS, '');
	return lines.replace(CONTROLS_IN_LINES, ' ').trim();
}
