import type { Mapped } from './mapped.ts';
import { samplesOf } from './mapped.ts';

/** Takes what a later call brought into what is there; for a time in both the later one stands. */
export function mergeMapped(into: Mapped, later: Mapped): void {
	into.hours = merged(
		into.hours,
		later.hours,
		({ at_s }) => at_s,
		(a, b) => a.at_s - b.at_s
	);
	into.days = merged(
		into.days,
		later.days,
		({ on }) => on,
		(a, b) => (a.on < b.on ? -1 : 1)
	);
	for (const [on, end_s] of later.dayEnds_s) into.dayEnds_s.set(on, end_s);
	into.station = later.station ?? into.station;
	into.issuedAt = older(into.issuedAt, later.issuedAt);
	into.tally.merge(later.tally);
	for (const [role, samples] of later.samples) samplesOf(into, role).push(...samples);
}

/** What is made of several answers is as old as the oldest. */
export function older(a: Date | null, b: Date | null): Date | null {
	if (a === null || b === null) return a ?? b;
	return a < b ? a : b;
}

function merged<Time, Key>(
	before: readonly Time[],
	later: readonly Time[],
	keyOf: (time: Time) => Key,
	order: (a: Time, b: Time) => number
): Time[] {
	if (before.length === 0) return [...later];
	const byKey = new Map(before.map((time) => [keyOf(time), time]));
	for (const time of later) byKey.set(keyOf(time), time);
	return [...byKey.values()].toSorted(order);
}
