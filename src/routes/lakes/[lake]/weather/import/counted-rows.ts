const TELL_EVERY_BYTES = 131_072;
const LINE_FEED = 10;

/** The same stream, telling now and then how many lines of it have been taken. */
export async function* countedRows(
	stream: AsyncIterable<Uint8Array>,
	tell: (rows: number) => void
): AsyncGenerator<Uint8Array> {
	let rows = 0;
	let untold = 0;
	for await (const bytes of stream) {
		yield bytes;
		for (const byte of bytes) if (byte === LINE_FEED) rows += 1;
		untold += bytes.length;
		if (untold < TELL_EVERY_BYTES) continue;
		untold = 0;
		tell(rows);
	}
	tell(rows);
}
