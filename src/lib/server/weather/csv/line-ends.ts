/** Turns CRLF and CR into LF in a text that comes in pieces, so that lines can be counted. */
export class LineEnds {
	#endsWithCr = false;

	push(text: string): string {
		if (text === '') return '';
		const rest = this.#endsWithCr && text.startsWith('\n') ? text.slice(1) : text;
		this.#endsWithCr = text.endsWith('\r');
		return rest.includes('\r') ? rest.replace(/\r\n?/g, '\n') : rest;
	}
}
