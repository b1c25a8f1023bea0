import { AsyncLocalStorage } from 'node:async_hooks';
import { randomInt } from 'node:crypto';

/** Who writes, for the record of changes. */
export interface Writer {
	name: string;
	at: Date;
}

interface Unit extends Writer {
	unit: number;
}

const writers = new AsyncLocalStorage<Unit>();
let last = 0;

/**
 * Puts on record, as one change of one person, what is written within `work`. What nobody in person
 * writes, as the schedule does, is not on record.
 */
export function writingAs<Result>(writer: Writer, work: () => Result): Result {
	// Grows from start to start as well, and by one for each of a moment; another process has another.
	last = Math.max(last + 1, Date.now() * 1000 + randomInt(1000));
	return writers.run({ ...writer, unit: last }, work);
}

/** Ends that for what goes on by itself afterwards, as a timer that a person's change has set. */
export function writingAsNobody<Result>(work: () => Result): Result {
	return writers.exit(work);
}

/**
 * Who writes stands in the table `writer` from the begin of a transaction to its end, and is taken
 * out before it is committed. So only the triggers of that transaction ever read it, whichever process
 * it is of: SQLite lets one write at a time, and shows nobody what is not committed.
 */
export const NOTE_WRITER = 'INSERT INTO writer (only_row, unit, who, at) VALUES (1, ?, ?, ?)';
export const FORGET_WRITER = 'DELETE FROM writer';

/** The values of {@link NOTE_WRITER}; `null` where nobody in person writes. */
export function writerValues(): [unit: number, who: string, at: string] | null {
	const writer = writers.getStore();
	return writer ? [writer.unit, writer.name, writer.at.toISOString()] : null;
}
