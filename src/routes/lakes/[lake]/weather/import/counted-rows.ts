const TELL_EVERY_BYTES = 131_072;
const LINE_FEED = 10;

/** The same stream, telling now and then how many lines and bytes of it have been taken. */
export async function* countedRows(
	stream: AsyncIterable<Uint8Array>,
	tell: (rows: number, bytes: number) => void
): AsyncGenerator<Uint8Array> {
	let rows = 0;
	let size = 0;
	let told = 0;
	for await (const bytes of stream) {
		yield bytes;
		for (const byte of bytes) if (byte === LINE_FEED) rows += 1;
		size += bytes.length;
		if (size - told < TELL_EVERY_BYTES) continue;
		told = size;
		tell(rows, size);
	}
	tell(rows, size);
}
