/** The longest line of RFC 5545 3.1, in octets, without its end. */
const LONGEST = 75;

/**
 * A line of a calendar as RFC 5545 writes it, folded with its end. `value` must be escaped where its
 * type asks for that.
 */
export function contentLine(name: string, value: string): string {
	return `${fold(`${name}:${value}`)}\r\n`;
}

/** A value of type TEXT (3.3.11): what would end it, or the line, is escaped; other controls go. */
export function escaped(text: string): string {
	return text
		.replace(/\r\n?/g, '\n')
		.replace(/[\p{Cc}\p{Cs}]/gu, (each) => (each === '\n' ? each : ''))
		.replace(/[\\;,]/g, '\\$&')
		.replaceAll('\n', '\\n');
}

/** Folds between characters, never inside one, though RFC 5545 would allow that. */
function fold(line: string): string {
	const parts: string[] = [];
	let part = '';
	let octets = 0;
	for (const each of line) {
		const size = Buffer.byteLength(each);
		if (octets + size > LONGEST) {
			parts.push(part);
			part = '';
			// The blank that begins a folded line is one of its octets.
			octets = 1;
		}
		part += each;
		octets += size;
	}
	return [...parts, part].join('\r\n ');
}
