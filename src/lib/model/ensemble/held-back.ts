/** What a day's readings did to a lower bound. */
export interface BoundRead {
	/** The bound of the day without its readings. */
	before_m: number;
	/** Holes whose thickness counts; none of a reading that is asked about. */
	holes: number;
	/** The thinnest hole of readings that were thinner than expected; `null` without such. */
	thinnest_m: number | null;
}

/** Takes in the lower bound of each day, in order, and returns the one to go by. */
export interface HeldBack {
	(bound_m: number, read: BoundRead | null): number;
	/** The same so far, to go on apart from it. */
	copy(): HeldBack;
}

/**
 * Lets a thicker reading raise a lower bound only gradually, and never by one hole alone.
 *
 *   shown = bound - held,  held = (bound - before)/n after a reading of n holes that raised it
 *
 * So 1 - 1/n of a rise comes through, nothing of that from one hole, and the rest once another reading
 * has been taken: what that one leaves of the bound has two to stand on. A reading thinner than expected
 * acts at once and in full: the bound is no more than its thinnest hole until another reading. One that
 * is asked about raises nothing and confirms nothing. Our rule, cautious.
 */
export function holdBack(): HeldBack {
	return holding(0);
}

function holding(from_m: number): HeldBack {
	let held_m = from_m;
	const shown = (bound_m: number, read: BoundRead | null): number => {
		if (read !== null) {
			const rise_m = Math.max(0, bound_m - read.before_m);
			held_m = read.holes === 0 ? held_m + rise_m : rise_m / read.holes;
			if (read.thinnest_m !== null) held_m = Math.max(held_m, bound_m - read.thinnest_m);
		} else if (bound_m <= 0) held_m = 0;
		return Math.max(0, bound_m - held_m);
	};
	return Object.assign(shown, { copy: () => holding(held_m) });
}
