import { encodingOf } from '../../csv/encoding.ts';

const HEAD = 65_536;

/** The text of an answer by what its bytes are; what the header says of them is often wrong. */
export function decode(bytes: Uint8Array): string {
	return new TextDecoder(encodingOf(bytes.subarray(0, HEAD))).decode(bytes);
}
