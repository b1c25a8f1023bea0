import type { IsoDate } from './calendar.ts';

/** One hole. `null` is not measured, never zero. */
export interface Hole {
	/** Clear and white ice together, without slush and snow. */
	total_m: number | null;
	clear_m: number | null;
	white_m: number | null;
	snow_m: number | null;
	slush_m: number | null;
	/** Top of the ice above the water in the hole; negative when water stands over the ice. */
	freeboard_m: number | null;
}

/** What was seen at one place and time. */
export interface Reading {
	id: string;
	on: IsoDate;
	place: string | null;
	/**
	 * `measured`: drilled through. `atLeast`: the tool did not go through. `wentThrough`: ice broke;
	 * a fact about its place, it does not move the site's estimate.
	 */
	kind: 'measured' | 'atLeast' | 'wentThrough';
	holes: Hole[];
	/** What the ice looked like in the hand. */
	core: 'sound' | 'wet' | 'candled' | null;
	by: string | null;
	/** Told by somebody else: it counts less, and no status rests on it. */
	secondHand: boolean;
	remark: string | null;
}
