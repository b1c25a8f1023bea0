import type { Fault } from '../contract.ts';

/** Clocks are some minutes apart, and answers lie in caches for as long. Common practice, no source. */
const APART_min = 15;

/** The clock of who sent an answer and that of this machine tell different times. */
export function clocksApart(sentAt: Date, now: Date): Fault | null {
	const ahead_min = (sentAt.getTime() - now.getTime()) / 60_000;
	if (Math.abs(ahead_min) <= APART_min) return null;
	const long = lengthOf(Math.abs(ahead_min));
	const text =
		ahead_min > 0
			? `By the clock of the service it is ${long} later than by that of this machine: if that is right, today and all ages told here are wrong. Set the clock of this machine.`
			: `By its own clock the service sent this answer ${long} ago: the clock of this machine is ahead, or the answer lay about on its way. It counts as no newer than that, and nothing after it as observed. See that the clock of this machine is right.`;
	return { code: 'clockDoubt', text, at: sentAt.toISOString() };
}

function lengthOf(minutes: number): string {
	return minutes < 90 ? `${Math.round(minutes)} minutes` : `${Math.round(minutes / 60)} hours`;
}
