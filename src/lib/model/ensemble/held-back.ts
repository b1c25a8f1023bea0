/** What a day's readings did to a lower bound. */
export interface BoundRead {
	/** The bound of the day without its readings. */
	before_m: number;
	/** What gaps in the weather would take from that one; as from the bound where it is not given. */
	gaps_m?: number;
	/** Holes whose thickness counts; none of a reading that is asked about. */
	holes: number;
	/** The thinnest hole of readings that were thinner than expected; `null` without such. */
	thinnest_m: number | null;
}

/**
 * Takes in the lower bound of each day, in order, with what gaps in the weather take from it, and returns
 * the one to go by.
 */
export interface HeldBack {
	(bound_m: number, read: BoundRead | null, gaps_m?: number): number;
	/** The same so far, to go on apart from it. */
	copy(): HeldBack;
}

/**
 * Lets a thicker reading raise a lower bound only gradually, and never by one hole alone.
 *
 *   shown = bound - gaps - raised - capped,  raised = rise of (bound - gaps)/n after n holes were read
 *
 * So 1 - 1/n of a rise comes through, nothing of that from one hole, and the rest once another reading
 * has been taken: what that one leaves of the bound has two to stand on. A reading thinner than expected
 * acts at once and in full: it caps the bound at its thinnest hole until two more holes have been read.
 * One that is asked about raises nothing and confirms nothing. Our rule, cautious.
 */
export function holdBack(): HeldBack {
	return holding(NOTHING);
}

/** Holes that it takes to lift what a thin one has capped: one alone raises nothing. */
const LIFTS_CAP = 2;

interface Held {
	raised_m: number;
	capped_m: number;
	/** Holes read since the one that caps. */
	sinceCap: number;
}

const NOTHING: Held = { raised_m: 0, capped_m: 0, sinceCap: 0 };

function holding(from: Held): HeldBack {
	let held = from;
	const shown = (bound_m: number, read: BoundRead | null, gaps_m = 0): number => {
		const net_m = Math.max(0, bound_m - gaps_m);
		if (read !== null) {
			const before_m = Math.max(0, read.before_m - (read.gaps_m ?? gaps_m));
			held = heldAfter(held, net_m, { ...read, before_m });
		} else if (bound_m <= 0) held = NOTHING;
		return Math.max(0, net_m - held.raised_m - held.capped_m);
	};
	return Object.assign(shown, { copy: () => holding(held) });
}

function heldAfter(held: Held, bound_m: number, read: BoundRead): Held {
	const { before_m, holes, thinnest_m } = read;
	const rise_m = Math.max(0, bound_m - before_m);
	const raised_m = holes === 0 ? held.raised_m + rise_m : rise_m / holes;
	const sinceCap = held.sinceCap + holes;
	const fall_m = Math.max(0, before_m - bound_m);
	const left_m = sinceCap >= LIFTS_CAP ? 0 : Math.max(0, held.capped_m - fall_m);
	const cap_m = thinnest_m === null ? 0 : Math.max(0, bound_m - raised_m - thinnest_m);
	if (cap_m > 0 && cap_m >= left_m) return { raised_m, capped_m: cap_m, sinceCap: 0 };
	return { raised_m, capped_m: left_m, sinceCap };
}
