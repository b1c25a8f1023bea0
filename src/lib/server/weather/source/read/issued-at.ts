import { dateShape, readStamp, type DateForm } from '../../cells/dates.ts';
import { inQuotes } from '../../cells/quote.ts';
import { wallSeconds } from '../../cells/stamp-time.ts';
import type { Mapping } from '../schema.ts';
import type { WallClock } from './clock-of.ts';
import type { Answer } from './columns.ts';
import { textAt } from './facts.ts';

export interface IssuedAt {
	at: Date | null;
	/** Why there is none, where the mapping says where it stands. */
	problem: string | null;
}

/**
 * When the answer says that it was made. A time without an offset is by the clock of the other times;
 * of an hour that comes twice the earlier is taken, since a forecast must not seem younger than it is.
 */
export function issuedAtOf(
	{ issued, time }: Mapping,
	answer: Answer,
	clock: WallClock | null
): IssuedAt {
	if (issued === undefined) return { at: null, problem: null };
	const text = textAt(issued, answer);
	if (text === null) return unread(issued, 'nothing stands there');
	const form = formOf(text, time.form);
	if (form === null) return unread(issued, `${inQuotes(text)} is no time`);
	const stamp = readStamp(text, form);
	if (typeof stamp === 'string') return unread(issued, stamp);
	const wall_s = wallSeconds(stamp);
	const instants = stamp.offset_s === null ? clock?.instants(wall_s) : [wall_s - stamp.offset_s];
	if (instants === undefined) return unread(issued, `${inQuotes(text)} carries no offset from UTC`);
	if (instants.length === 0) return unread(issued, `${inQuotes(text)} does not exist on its clock`);
	return { at: new Date(Math.min(...instants) * 1000), problem: null };
}

/** Day and month in digits are in the order of the other times. */
function formOf(text: string, ofTimes: Mapping['time']['form']): DateForm | null {
	const shape = dateShape(text);
	if (shape !== 'numeric') return shape;
	return ofTimes === 'd/m/Y' || ofTimes === 'm/d/Y' ? ofTimes : null;
}

function unread(path: string, why: string): IssuedAt {
	const problem = `When the forecast was made was not understood at ${path}: ${why}. Its age may be told too low; choose another place for it.`;
	return { at: null, problem };
}
