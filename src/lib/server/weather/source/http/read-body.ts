/** The answer is larger than the limit. */
export class TooLarge extends Error {
	override readonly name = 'TooLarge';
}

/**
 * The body, decompressed. It is counted as it comes, so that a small file that unpacks to a huge one
 * is left in the middle.
 */
export async function readBody(response: Response, maxBytes: number): Promise<Uint8Array> {
	if (!response.body) return new Uint8Array();
	const pieces: Uint8Array[] = [];
	let size = 0;
	// Leaving the loop by an error cancels the stream.
	for await (const piece of response.body) {
		size += piece.byteLength;
		if (size > maxBytes) throw new TooLarge(`more than ${maxBytes} bytes`);
		pieces.push(piece);
	}
	return Buffer.concat(pieces);
}
