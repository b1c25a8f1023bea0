const QUOTE = 34;
const BACKSLASH = 92;
const OPENING = new Set([91, 123]);
const CLOSING = new Set([93, 125]);

/** How deep the brackets of a JSON text go, and whether it ends before they are closed. */
export function nestingOf(text: string): { deepest: number; isOpen: boolean } {
	let depth = 0;
	let deepest = 0;
	let isString = false;
	for (let at = 0; at < text.length; at += 1) {
		const code = text.charCodeAt(at);
		if (code === BACKSLASH && isString) at += 1;
		else if (code === QUOTE) isString = !isString;
		else if (isString || code < 91) continue;
		else if (OPENING.has(code)) deepest = Math.max(deepest, (depth += 1));
		else if (CLOSING.has(code)) depth -= 1;
	}
	return { deepest, isOpen: isString || depth > 0 };
}
