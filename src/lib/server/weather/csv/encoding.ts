export type Encoding = 'utf-8' | 'utf-16le' | 'utf-16be' | 'windows-1252';

/** The encoding of a text by its mark, else by where its zero bytes lie, else by whether it is UTF-8. */
export function encodingOf(head: Uint8Array): Encoding {
	const [first, second] = head;
	if (first === 0xff && second === 0xfe) return 'utf-16le';
	if (first === 0xfe && second === 0xff) return 'utf-16be';
	const even = zeroShare(head, 0);
	const odd = zeroShare(head, 1);
	if (odd > 0.4 && even < 0.1) return 'utf-16le';
	if (even > 0.4 && odd < 0.1) return 'utf-16be';
	return isUtf8(head) ? 'utf-8' : 'windows-1252';
}

/** The text of a head that may end inside a character; the byte order mark is dropped. */
export function decodeHead(head: Uint8Array, encoding: Encoding): string {
	return new TextDecoder(encoding).decode(head, { stream: true });
}

function zeroShare(head: Uint8Array, start: 0 | 1): number {
	let zeros = 0;
	let seen = 0;
	for (let index = start; index < head.length; index += 2) {
		seen += 1;
		if (head[index] === 0) zeros += 1;
	}
	return seen < 2 ? 0 : zeros / seen;
}

function isUtf8(head: Uint8Array): boolean {
	try {
		new TextDecoder('utf-8', { fatal: true }).decode(head, { stream: true });
		return true;
	} catch {
		return false;
	}
}
