import type { Phase } from '../lake-winter.ts';
import { errorsOf, ofPhase, type Miss } from './errors.ts';
import { summarize, type Summary } from './summary.ts';

/** Readings that have something in common. */
export interface Bin {
	name: string;
	/** The middle of it, where it has a place on a scale. */
	at: number;
	errors: Record<Phase, Summary | null>;
}

export function binOf(name: string, at: number, misses: readonly Miss[]): Bin {
	return {
		name,
		at,
		errors: {
			growth: summarize(errorsOf(ofPhase(misses, 'growth'))),
			decay: summarize(errorsOf(ofPhase(misses, 'decay')))
		}
	};
}

/** Bins of equal width from zero, the empty ones left out. */
export function evenBins(
	misses: readonly Miss[],
	valueOf: (miss: Miss) => number,
	width: number
): Bin[] {
	const indices = misses.map((miss) => Math.floor(valueOf(miss) / width));
	return [...new Set(indices)]
		.toSorted((a, b) => a - b)
		.map((index) =>
			binOf(
				`${index * width} to ${(index + 1) * width}`,
				(index + 0.5) * width,
				misses.filter((_, at) => indices[at] === index)
			)
		);
}
