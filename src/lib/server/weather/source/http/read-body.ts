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
	const reader = response.body.getReader();
	const pieces: Uint8Array[] = [];
	let size = 0;
	for (;;) {
		const { done, value } = await reader.read();
		if (done) return Buffer.concat(pieces);
		size += value.byteLength;
		if (size > maxBytes) {
			dropBody(reader);
			throw new TooLarge(`more than ${maxBytes} bytes`);
		}
		pieces.push(value);
	}
}

/** Lets the rest of a body go. Nobody waits for that: a stream can take its time to end. */
export function dropBody(body: { cancel: () => Promise<void> } | null): void {
	body?.cancel().catch(() => undefined);
}
