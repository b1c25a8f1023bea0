import type { ValueRole } from '../../cells/units.ts';

/** What was left out while an answer was read, and how often. */
const TALLIED = [
	'unreadTimes',
	'skippedTimes',
	'doubledTimes',
	'repeatedTimes',
	'nulls',
	'notNumbers',
	'impossible',
	'contradictions'
] as const;
export type Tallied = (typeof TALLIED)[number];

export interface Count {
	what: Tallied;
	role: ValueRole | null;
	count: number;
	/** The first of them, in words. */
	first: string;
	/** When it was: a day, or an hour of the lake's clock. */
	at: string | null;
}

/** Counts by kind and role; those of several calls add up. */
export class Tally {
	readonly #counts = new Map<string, Count>();
	readonly #problems = new Set<string>();

	add(what: Tallied, role: ValueRole | null, first: string, at: string | null, count = 1): void {
		if (count === 0) return;
		const key = `${what} ${role ?? ''}`;
		const before = this.#counts.get(key);
		if (before) before.count += count;
		else this.#counts.set(key, { what, role, count, first, at });
	}

	/** A sentence about paths that lead nowhere. */
	addProblem(text: string): void {
		this.#problems.add(text);
	}

	merge(other: Tally): void {
		for (const { what, role, first, at, count } of other.counts)
			this.add(what, role, first, at, count);
		for (const text of other.problems) this.#problems.add(text);
	}

	count(what: Tallied, role: ValueRole | null): number {
		return this.#counts.get(`${what} ${role ?? ''}`)?.count ?? 0;
	}

	get counts(): Count[] {
		return [...this.#counts.values()].toSorted(
			(a, b) => TALLIED.indexOf(a.what) - TALLIED.indexOf(b.what)
		);
	}

	get problems(): string[] {
		return [...this.#problems];
	}
}
