import type { IsoDate } from '../calendar.ts';
import { quantilesOf } from './quantiles.ts';
import type { EnsembleDay } from './run.ts';

/** What the ice has lost since it was thickest, by the members of an ensemble. */
export interface Loss {
	/** The day since which half of them have been losing; the day asked for while they have not. */
	peakOn: IsoDate;
	/** At one spot of each: a tenth has lost less than p10. */
	p10_m: number;
	p50_m: number;
	p90_m: number;
}

export interface LossTracker {
	/** Takes in a day, in order. */
	see(day: Pick<EnsembleDay, 'on' | 'holes' | 'before'>): void;
	/** `null` before the first day. */
	loss(): Loss | null;
	/** The same so far, to go on apart from it. */
	copy(): LossTracker;
}

/**
 * Follows what each member's ice has lost since it was thickest, whole thickness at its own spot.
 *
 *   loss = max(0, loss - change of the day)
 *
 * Only what weather did counts: where a reading pulls a member, it has lost or won nothing by it. A skim
 * that forms where all had gone makes up for its own thickness only.
 */
export function trackLoss(count: number): LossTracker {
	return trackerOf({
		lost_m: new Float64Array(count),
		last_m: new Float64Array(count),
		peaks: Array.from({ length: count }, () => ''),
		isFirst: true
	});
}

interface State {
	lost_m: Float64Array;
	/** Thickness of each on the last day, its readings taken in. */
	last_m: Float64Array;
	peaks: IsoDate[];
	isFirst: boolean;
}

function trackerOf(state: State): LossTracker {
	const { lost_m, last_m, peaks } = state;
	const count = peaks.length;
	return {
		see({ on, holes, before }) {
			const came = (before ?? holes).total_m;
			for (let i = 0; i < count; i++) {
				const was_m = last_m[i] ?? 0;
				const since_m = (lost_m[i] ?? 0) + was_m - (came[i] ?? 0);
				const loss_m = state.isFirst ? 0 : Math.max(0, since_m);
				lost_m[i] = loss_m;
				if (loss_m <= 0) peaks[i] = on;
				last_m[i] = holes.total_m[i] ?? 0;
			}
			state.isFirst = false;
		},
		loss() {
			if (state.isFirst) return null;
			const [p10, p50, p90] = quantilesOf(lost_m, [0.1, 0.5, 0.9]);
			const peakOn = peaks.toSorted()[Math.floor(count / 2)] ?? '';
			return { peakOn, p10_m: p10 ?? 0, p50_m: p50 ?? 0, p90_m: p90 ?? 0 };
		},
		copy: () =>
			trackerOf({
				lost_m: lost_m.slice(),
				last_m: last_m.slice(),
				peaks: [...peaks],
				isFirst: state.isFirst
			})
	};
}
