import type { IsoDate } from '../calendar.ts';

/** When the ice goes, by the members of an ensemble that ever had any. */
export interface IceOutWindow {
	/** One in ten, a half and nine in ten of them are open by then; `null`: later than is told. */
	p10: IsoDate | null;
	p50: IsoDate | null;
	p90: IsoDate | null;
	/** Share that still has ice on the last day told. */
	neverFraction: number;
}

export interface IceOutTracker {
	/** Takes in a day, in order: what each member's ice has on it. */
	see(on: IsoDate, layers: MemberIce): void;
	/** `null` while no member has had ice. */
	window(): IceOutWindow | null;
	/** The same so far, to go on apart from it. */
	copy(): IceOutTracker;
}

/** Layers that make a member not open, an array over members each. */
export interface MemberIce {
	readonly clear_m: ArrayLike<number>;
	readonly white_m: ArrayLike<number>;
	readonly slush_m: ArrayLike<number>;
}

/**
 * Follows an ensemble to the ice-out of each member: its first day without ice after its thickest one.
 *
 * Ice that comes and goes before is thus no ice-out, nor is a skim that forms after it an end to it.
 * Quantiles are of the members themselves, so that those that never open come last.
 */
export function trackIceOut(count: number): IceOutTracker {
	return trackerOf(
		new Float64Array(count),
		Array.from({ length: count }, () => null)
	);
}

function trackerOf(thickest_m: Float64Array, opensOn: (IsoDate | null)[]): IceOutTracker {
	return {
		see(on, { clear_m, white_m, slush_m }) {
			for (let i = 0; i < thickest_m.length; i++) {
				const ice_m = (clear_m[i] ?? 0) + (white_m[i] ?? 0);
				const peak_m = thickest_m[i] ?? 0;
				if (ice_m > 0 && ice_m >= peak_m) {
					thickest_m[i] = ice_m;
					opensOn[i] = null;
				} else if (ice_m <= 0 && (slush_m[i] ?? 0) <= 0 && peak_m > 0) opensOn[i] ??= on;
			}
		},
		window: () => windowOf(opensOn.filter((_, i) => (thickest_m[i] ?? 0) > 0)),
		copy: () => trackerOf(thickest_m.slice(), [...opensOn])
	};
}

function windowOf(opensOn: readonly (IsoDate | null)[]): IceOutWindow | null {
	if (opensOn.length === 0) return null;
	const sorted = opensOn.filter((on) => on !== null).toSorted();
	const quantile = (p: number): IsoDate | null => sorted[Math.ceil(p * opensOn.length) - 1] ?? null;
	return {
		p10: quantile(0.1),
		p50: quantile(0.5),
		p90: quantile(0.9),
		neverFraction: 1 - sorted.length / opensOn.length
	};
}
