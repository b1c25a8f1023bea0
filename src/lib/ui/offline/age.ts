const DAY_MS = 86_400_000;

/** How many midnights lie between, by the clock of this device. */
export function midnights(from: Date, to: Date): number {
	const dayOf = (at: Date) => Date.UTC(at.getFullYear(), at.getMonth(), at.getDate());
	return Math.max(0, Math.round((dayOf(to) - dayOf(from)) / DAY_MS));
}
