/** As much of a file as its form is guessed from. */
const HEAD_BYTES = 65_536;

/** The first 64 kB of a stream, and the whole of it again. */
export async function splitHead(
	stream: AsyncIterable<Uint8Array>
): Promise<{ head: Uint8Array; whole: AsyncIterable<Uint8Array> }> {
	const iterator = stream[Symbol.asyncIterator]();
	const first: Uint8Array[] = [];
	let size = 0;
	while (size < HEAD_BYTES) {
		const { value, done } = await iterator.next();
		if (done) break;
		first.push(value);
		size += value.byteLength;
	}
	const head = Buffer.concat(first).subarray(0, HEAD_BYTES);
	return { head, whole: replay(first, iterator) };
}

async function* replay(
	first: readonly Uint8Array[],
	rest: AsyncIterator<Uint8Array>
): AsyncGenerator<Uint8Array> {
	yield* first;
	for (;;) {
		const { value, done } = await rest.next();
		if (done) return;
		yield value;
	}
}
