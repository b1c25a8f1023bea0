import type { Stamp, ValueMapping } from '../schema.ts';
import { stepsAfter_s, stepsBefore_s } from './steps.ts';
import type { Timeline } from './timeline.ts';

/** A value and the time that it stands for. */
export interface Piece {
	start_s: number;
	length_s: number;
	value: number;
	/** Of a moment: what the next one says, where it follows within the pace, else `null`. */
	next: number | null;
}

/** Days of one interval; longer ones are no weather. */
const LONGEST_s = 10 * 86_400;

/** The values of a column laid on their times. */
export function piecesOf(
	{ starts_s, lengths_s }: Timeline,
	values: readonly (number | null)[],
	{ duration_h }: Pick<ValueMapping, 'duration_h'>,
	stamp: Stamp
): Piece[] {
	const steps = stamp === 'end' ? stepsBefore_s(starts_s) : stepsAfter_s(starts_s);
	const stated_s = duration_h === undefined ? null : duration_h * 3600;
	const pieces: Piece[] = [];
	for (const [at, at_s] of starts_s.entries()) {
		const value = values[at] ?? null;
		if (value === null) continue;
		const length_s = Math.min(lengths_s[at] ?? stated_s ?? steps[at] ?? 3600, LONGEST_s);
		const isFollowed = (starts_s[at + 1] ?? NaN) - at_s === length_s;
		const next = stamp === 'instant' && isFollowed ? (values[at + 1] ?? null) : null;
		const start_s = stamp === 'end' ? onTheHour(at_s - length_s) : at_s;
		pieces.push({ start_s, length_s, value, next });
	}
	return pieces;
}

/** Stations report the hour that ends at 14:00 some minutes before 14:00. */
function onTheHour(start_s: number): number {
	const past_s = ((start_s % 3600) + 3600) % 3600;
	return past_s > 2700 ? start_s - past_s + 3600 : start_s;
}
