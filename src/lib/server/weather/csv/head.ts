import { decodeHead, encodingOf, type Encoding } from './encoding.ts';
import { foreignContent } from './foreign.ts';
import { LineEnds } from './line-ends.ts';
import type { RowProblem } from './problem.ts';

/** All decisions are made on this much of the file, the same for a preview and for an import. */
export const HEAD_BYTES = 65_536;
export const MOST_COLUMNS = 1000;

/** The whole lines at the start of a file, line ends as LF. */
export interface Head {
	encoding: Encoding;
	text: string;
	/** The file goes on behind the head. */
	isCut: boolean;
	problem: RowProblem | null;
}

/** A head shorter than {@link HEAD_BYTES} is taken for the whole file. */
export function readHead(bytes: Uint8Array): Head {
	const head = bytes.subarray(0, HEAD_BYTES);
	const encoding = encodingOf(head);
	const decoded = new LineEnds().push(decodeHead(head, encoding));
	const isCut = bytes.length >= HEAD_BYTES;
	const text = isCut ? decoded.slice(0, decoded.lastIndexOf('\n') + 1) : decoded;
	const reason = foreignContent(head, decoded) ?? (text.trim() === '' ? longLine(decoded) : null);
	return { encoding, text, isCut, problem: reason === null ? null : { line: 1, reason } };
}

function longLine(text: string): string {
	const separators = text.match(/[,;\t|]/g)?.length ?? 0;
	return separators > MOST_COLUMNS
		? `the first line has more than ${MOST_COLUMNS} columns; one row a day or an hour is needed, not one column`
		: 'the first line is longer than 65,536 characters; put a line break after each row';
}
